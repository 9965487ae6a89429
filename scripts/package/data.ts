import fs from 'node:fs';
import path from 'node:path';

/** What the notices beside our data say, each with its folder: the data are built into the programs. Sorted. */
export function readNotices(source: string): { folder: string; text: string }[] {
  return fs
    .readdirSync(source, { recursive: true, encoding: 'utf8' })
    .filter(file => path.basename(file) === 'NOTICE.md')
    .sort()
    .map(file => ({
      folder: path.dirname(file).split(path.sep).join('/'),
      text: fs.readFileSync(path.join(source, file), 'utf8').trim(),
    }));
}
