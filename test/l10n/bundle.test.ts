import assert from 'node:assert/strict';
import fs from 'node:fs';
import { BUNDLE, bundleOf } from '../../scripts/l10n/bundle';
import { translatedIn } from '../../scripts/l10n/strings';

const json = (file: string) => JSON.parse(fs.readFileSync(file, 'utf8'));
const translations = (folder: string, name: RegExp) =>
  fs.readdirSync(folder).flatMap(file => (name.test(file) ? [`${folder}/${file}`] : []));
const holes = (text: string) => (text.match(/\{\d+\}/g) ?? []).sort();
const links = (text: string) => (text.match(/\(command:[\w.]+\)/g) ?? []).sort();

describe('strings that are translated', () => {
  it('are found in every way of writing them', async () => {
    const source = `
      // t('in a comment')
      const t: typeof vscode.l10n.t = vscode.l10n.t;
      say(t('one’s {0}', at('not this')), vscode.l10n.t("it's"), t(\`two
lines\`), format('nor this'), html\`<p title="\${l10n.t('in a page')}">\${t('of text')}</p>\`);`;
    const found = ['one’s {0}', "it's", 'two\nlines', 'in a page', 'of text'];
    assert.deepEqual(await translatedIn(source, 'x.ts'), found);
  });

  it('must be literals', async () => {
    for (const call of ['t(words)', `t(some ? 'a' : 'b')`, "t('a' + more)", 'vscode.l10n.t(words)'])
      await assert.rejects(translatedIn(call, 'x.ts'), /x\.ts: .* is no literal/, call);
  });

  it('are all in the bundle, and nothing else is (npm run l10n)', async () => {
    assert.equal(fs.readFileSync(BUNDLE, 'utf8'), await bundleOf('.'));
  });

  it('keep their holes in every translation, and are no others', () => {
    const strings = new Set(Object.keys(json(BUNDLE)));
    for (const file of translations('l10n', /^bundle\.l10n\.[\w-]+\.json$/))
      for (const [string, translated] of Object.entries<string>(json(file))) {
        assert.ok(strings.has(string), `${file}: nobody says ${string}`);
        assert.deepEqual(holes(translated), holes(string), `${file}: ${string}`);
      }
  });
});

describe('strings of package.json', () => {
  const manifest = fs.readFileSync('package.json', 'utf8');
  const words: Record<string, string> = json('package.nls.json');

  it('are all in package.nls.json, and nothing else is', () => {
    const asked = [...manifest.matchAll(/"%([\w.-]+)%"/g)].map(([, key]) => key);
    assert.deepEqual([...new Set(asked)].sort(), Object.keys(words).sort());
  });

  it('are none but those of package.nls.json where a person reads them', () => {
    const read =
      /"(title|name|displayName|description|markdownDescription|contents|altText)": "(?!%)([^"]+)"/g;
    const { contributes } = JSON.parse(manifest);
    const plain = [...JSON.stringify(contributes, null, 1).matchAll(read)].map(([, , text]) => text);
    assert.deepEqual(plain, ['Evengrey']);
  });

  it('keep their commands in every translation', () => {
    for (const file of translations('.', /^package\.nls\.[\w-]+\.json$/))
      for (const [key, translated] of Object.entries<string>(json(file))) {
        assert.ok(key in words, `${file}: ${key}`);
        assert.deepEqual(links(translated), links(words[key]), `${file}: ${key}`);
      }
  });
});
