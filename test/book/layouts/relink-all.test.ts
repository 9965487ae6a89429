import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { relinkAll } from '../../../src/book/layouts/relink-all';
import { noSettings } from '../../../src/book/settings/settings';
import { temporaryFolder } from '../support/folder';

const all = (root: string, replacements: Record<string, string>, dryRun = false) =>
  relinkAll(root, noSettings, new Map(Object.entries(replacements)), { dryRun });
const bytesOf = (root: string, file: string) => fs.readFileSync(path.join(root, file));
const namesIn = (root: string) => fs.readdirSync(root).sort();

describe('relinking a book', () => {
  const markdown =
    '\uFEFF# Book\r\n\r\n![a](p/a.jpg) and <img src="p/a.jpg">\r![r] ![r]\n\n[r]: <./p/a.jpg> "t"\n![b](p/b.jpg)';

  it('changes the paths of the pictures and not one byte else', async () => {
    const root = temporaryFolder({
      'book.md': markdown,
      'x.md': '![b](p/b.jpg)',
      'p/a.jpg': '',
      'p/b.jpg': '',
    });
    fs.chmodSync(path.join(root, 'book.md'), 0o640);
    const { changes, problems } = await all(root, { 'p/a.jpg': 'p/a new.jpg' });
    assert.deepEqual(problems, []);
    assert.deepEqual(
      changes.map(({ file, line, column, from, to }) => `${file}:${line}:${column} ${from} -> ${to}`),
      [
        'book.md:3:6 p/a.jpg -> p/a%20new.jpg',
        'book.md:3:29 p/a.jpg -> p/a%20new.jpg',
        'book.md:6:7 ./p/a.jpg -> ./p/a new.jpg',
      ],
    );
    const written = markdown
      .replace('<./p/a.jpg>', '<./p/a new.jpg>')
      .replaceAll('(p/a.jpg', '(p/a%20new.jpg')
      .replace('"p/a.jpg"', '"p/a%20new.jpg"');
    assert.equal(bytesOf(root, 'book.md').toString(), written);
    assert.equal(fs.statSync(path.join(root, 'book.md')).mode & 0o777, 0o640);
    assert.deepEqual(namesIn(root), ['book.md', 'p', 'x.md'], 'nothing is left beside it');
    fs.writeFileSync(path.join(root, 'p/a new.jpg'), '');
    const again = await all(root, { 'p/a.jpg': 'p/a new.jpg' });
    assert.deepEqual([again.changes, again.problems], [[], []], 'once');
  });

  it('writes nothing in a dry run, and says the same', async () => {
    const root = temporaryFolder({ 'book.md': markdown, 'p/a.jpg': '' });
    const dry = await all(root, { 'p/a.jpg': 'p/new.jpg' }, true);
    assert.equal(bytesOf(root, 'book.md').toString(), markdown);
    assert.deepEqual(dry, await all(root, { 'p/a.jpg': 'p/new.jpg' }));
  });

  it('tells what a source is about to say before it is written, and nothing in a dry run', async () => {
    const root = temporaryFolder({
      'book.md': markdown,
      'x.md': '![b](p/b.jpg)',
      'p/a.jpg': '',
      'p/b.jpg': '',
    });
    const replacements = new Map([
      ['p/a.jpg', 'p/new.jpg'],
      ['p/b.jpg', 'p/newer.jpg'],
    ]);
    const told: [string, string][] = [];
    const before = async ([{ file, to }]: readonly { file: string; to: string }[]) => {
      told.push([file, to]);
      assert.ok(!bytesOf(root, file).toString().includes(to));
      return file === 'x.md' ? 'It is to stay.' : null;
    };
    await relinkAll(root, noSettings, replacements, { before, dryRun: true });
    assert.deepEqual(told, []);
    const { problems } = await relinkAll(root, noSettings, replacements, { before });
    assert.deepEqual(told, [
      ['book.md', 'p/new.jpg'],
      ['x.md', 'p/newer.jpg'],
    ]);
    assert.deepEqual(problems, [{ file: 'x.md', line: null, why: 'It is to stay.' }]);
    assert.equal(bytesOf(root, 'x.md').toString(), '![b](p/b.jpg)');
  });

  it('goes by the texts that an editor has open, and by the encodings of their files', async () => {
    const stored = Buffer.from('\\includegraphics{a.jpg} \xdf', 'latin1');
    const root = temporaryFolder({ 'l.tex': stored, 'a.jpg': '' });
    const open = new Map([['l.tex', '%\n\\includegraphics{a.jpg} \xdf']]);
    const told = (to: string) =>
      relinkAll(root, noSettings, new Map([['a.jpg', to]]), { dryRun: true, open });
    const { changes } = await told('b.jpg');
    assert.deepEqual(
      changes.map(({ line, column, from, to }) => [line, column, from, to]),
      [[2, 18, 'a.jpg', 'b.jpg']],
    );
    assert.match((await told('東.jpg')).problems[0].why, /letters that the encoding/);
    assert.deepEqual(bytesOf(root, 'l.tex'), stored);
  });

  it('keeps every encoding, and leaves a file alone that cannot hold the new name', async () => {
    const latin = Buffer.from('\xfc \\includegraphics{a} \xdf', 'latin1');
    const wide = Buffer.from('\uFEFF![ü](a.jpg)\r\n', 'utf16le').swap16();
    const root = temporaryFolder({ 'l.tex': latin, 'w.md': wide, 'a.jpg': '' });
    await all(root, { 'a.jpg': 'ö.jpg' });
    assert.deepEqual(bytesOf(root, 'l.tex'), Buffer.from('\xfc \\includegraphics{\xf6.jpg} \xdf', 'latin1'));
    assert.deepEqual(bytesOf(root, 'w.md'), Buffer.from('\uFEFF![ü](ö.jpg)\r\n', 'utf16le').swap16());
    fs.writeFileSync(path.join(root, 'l.tex'), latin);
    const { problems } = await all(root, { 'a.jpg': '東.jpg' });
    assert.deepEqual(
      problems.map(({ file, why }) => `${file} ${why.slice(0, 24)}`),
      ['l.tex The new name has letters'],
    );
    assert.deepEqual(bytesOf(root, 'l.tex'), latin);
  });

  it('tells what cannot be named, what is protected, and what is refused', async () => {
    const root = temporaryFolder({
      'm.tex': String.raw`\newcommand{\p}[1]{\includegraphics{#1.jpg}}\p{a}`,
      'protected.md': '![](a.jpg)',
      'x.html': '<img src="a.jpg">',
      'a.jpg': '',
    });
    fs.chmodSync(path.join(root, 'protected.md'), 0o444);
    const { changes, problems } = await relinkAll(root, noSettings, new Map([['a.jpg', 'a.tif']]), {
      refused: (kind, from, to) => (kind === 'html' ? `${from} stays, and is not ${to}.` : null),
    });
    assert.deepEqual(
      problems.map(({ file, line, why }) => `${file}:${line} ${why}`),
      [
        'm.tex:1 "a.tif" cannot be named here: the layout puts "" before and ".jpg" behind it.',
        'protected.md:null It is write-protected.',
        'x.html:1 a.jpg stays, and is not a.tif.',
      ],
    );
    assert.deepEqual(changes, []);
    assert.equal(bytesOf(root, 'x.html').toString(), '<img src="a.jpg">');
  });

  it('says what is placed then, with a first line, also where a text is left as it is', async () => {
    const files = {
      'a.md': '![](a.jpg)\n![](b.jpg)',
      'b.md': '![](a.jpg) ![](a.jpg)',
      'a.jpg': '',
      'b.jpg': '',
    };
    const root = temporaryFolder(files);
    const wanted = { 'a.jpg': 'c.jpg' };
    const then = [
      ['c.jpg', 'a.md:1'],
      ['b.jpg', 'a.md:2'],
    ];
    assert.deepEqual([...(await all(root, wanted, true)).places], then);
    fs.chmodSync(path.join(root, 'b.md'), 0o444);
    assert.deepEqual([...(await all(root, wanted)).places], [...then, ['a.jpg', 'b.md:1']]);
  });

  it('follows a link to a layout and keeps it a link', async () => {
    const root = temporaryFolder({ 'deep/book.md': '![](a.jpg)', 'deep/a.jpg': '', 'a.jpg': '' });
    fs.symlinkSync('deep/book.md', path.join(root, 'link.md'));
    await all(root, { 'deep/a.jpg': 'deep/b.jpg', 'a.jpg': 'c.jpg' });
    assert.ok(fs.lstatSync(path.join(root, 'link.md')).isSymbolicLink());
  });

  it('does not write over what somebody changed meanwhile', async () => {
    const root = temporaryFolder({ 'book.md': '![](a.jpg)', 'a.jpg': '' });
    const open = fs.promises.open;
    // the editor saves just when the new file has been begun
    fs.promises.open = (async (...args: Parameters<typeof open>) => {
      fs.writeFileSync(path.join(root, 'book.md'), '![](a.jpg) more');
      return open(...args);
    }) as typeof open;
    try {
      const { changes, problems } = await all(root, { 'a.jpg': 'b.jpg' });
      assert.deepEqual(changes, []);
      assert.match(problems[0].why, /changed meanwhile/);
    } finally {
      fs.promises.open = open;
    }
    assert.equal(bytesOf(root, 'book.md').toString(), '![](a.jpg) more');
    assert.deepEqual(namesIn(root), ['a.jpg', 'book.md']);
  });
});
