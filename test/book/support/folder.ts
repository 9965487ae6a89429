import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';

/** A folder for one test, filled with files (path -> text), gone after it. */
export function temporaryFolder(files: Record<string, string | Uint8Array> = {}): string {
  const folder = fs.realpathSync(fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-test-')));
  folders.push(folder);
  write(folder, files);
  return folder;
}

export function write(folder: string, files: Record<string, string | Uint8Array>): void {
  for (const [name, content] of Object.entries(files)) {
    const file = path.join(folder, name);
    fs.mkdirSync(path.dirname(file), { recursive: true });
    fs.writeFileSync(file, content, { flag: NOT_THROUGH_LINKS });
  }
}

/** A test that made a link must not write to what it leads to. As a number the flag is taken, though not by the types. */
const { O_WRONLY, O_CREAT, O_TRUNC, O_NOFOLLOW } = fs.constants;
const NOT_THROUGH_LINKS = (O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW) as unknown as string;

const folders: string[] = [];

afterEach(() => {
  for (const folder of folders.splice(0)) fs.rmSync(folder, { recursive: true, force: true });
});
