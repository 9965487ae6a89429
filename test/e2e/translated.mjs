// The suite that sees the extension in another language. A desktop needs a language pack for that; a window in a browser
// is told its language by the page that it is in.
import fs from 'node:fs';
import path from 'node:path';

/** A language that nobody speaks: its words are the English ones in brackets. */
const LANGUAGE = 'qps-ploc';

/** One suite, with the extension in a folder of its own under `root`/out: what it is made of, and words for that language. */
export function translatedSuites(root) {
  const folder = path.join(root, 'out/translated');
  return [
    {
      label: 'translated',
      files: 'out/test/e2e/suites/translated/**/*.test.js',
      workspaceFolder: 'out/workspaces/translated',
      mocha: { ui: 'bdd', timeout: 60_000 },
      language: LANGUAGE,
      development: () => stage(root, folder),
    },
  ];
}

function stage(root, folder) {
  fs.rmSync(folder, { recursive: true, force: true });
  fs.mkdirSync(path.join(folder, 'l10n'), { recursive: true });
  // copies: the editor knows whose code it runs by where that really lies
  for (const name of ['package.json', 'package.nls.json', 'dist', 'media'])
    fs.cpSync(path.join(root, name), path.join(folder, name), { recursive: true });
  const strings = Object.keys(JSON.parse(fs.readFileSync(path.join(root, 'l10n/bundle.l10n.json'), 'utf8')));
  const bundle = Object.fromEntries(strings.map(string => [string, `⟦${string}⟧`]));
  fs.writeFileSync(path.join(folder, `l10n/bundle.l10n.${LANGUAGE}.json`), JSON.stringify(bundle));
  return folder;
}
