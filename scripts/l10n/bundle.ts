// no-unit-test: test/l10n/bundle.test.ts compares what it finds with what is shipped
import fs from 'node:fs/promises';
import path from 'node:path';
import { translatedIn } from './strings';

/** Of the strings that are translated while the extension runs; those of package.json are in package.nls.json. */
export const BUNDLE = 'l10n/bundle.l10n.json';

/** Every translated string of the editor under `root`, by itself, sorted: the text of the bundle. */
export async function bundleOf(root: string): Promise<string> {
  const folder = path.join(root, 'src/editor');
  const names = (await fs.readdir(folder, { recursive: true })).filter(name => name.endsWith('.ts'));
  const found = await Promise.all(
    names.map(async name => translatedIn(await fs.readFile(path.join(folder, name), 'utf8'), name)),
  );
  const strings = [...new Set(found.flat())].sort();
  return `${JSON.stringify(Object.fromEntries(strings.map(string => [string, string])), null, 2)}\n`;
}
