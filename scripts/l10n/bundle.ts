// no-unit-test: test/l10n/bundle.test.ts compares what it finds with what is shipped
import fs from 'node:fs/promises';
import path from 'node:path';
import { translatedIn } from './strings';

/** Of the strings that are translated while the extension runs; those of package.json are in package.nls.json. */
export const BUNDLE = 'l10n/bundle.l10n.json';

/** What runs in the editor's extension host, and what runs in its pages: both look strings up in one bundle. */
const SOURCES = ['src/editor', 'src/preview'];

/** Every translated string of the editor under `root`, by itself, sorted: the text of the bundle. */
export async function bundleOf(root: string): Promise<string> {
  const files = await Promise.all(SOURCES.map(folder => sourcesIn(path.join(root, folder))));
  const found = await Promise.all(
    files.flat().map(async file => translatedIn(await fs.readFile(file, 'utf8'), path.relative(root, file))),
  );
  const strings = [...new Set(found.flat())].sort();
  return `${JSON.stringify(Object.fromEntries(strings.map(string => [string, string])), null, 2)}\n`;
}

async function sourcesIn(folder: string): Promise<string[]> {
  const names = await fs.readdir(folder, { recursive: true });
  return names.filter(name => name.endsWith('.ts')).map(name => path.join(folder, name));
}
