import assert from 'node:assert/strict';
import { relinkAll } from '../../../src/book/layouts/relink-all';
import { noSettings } from '../../../src/book/settings/settings';
import { temporaryFolder } from '../support/folder';

/** What lines are to say once `from` is called `to`. */
async function moved(files: Record<string, string>, from: string, to: string) {
  const moving = (path: string) =>
    path === from || path.startsWith(`${from}/`) ? to + path.slice(from.length) : path;
  const { changes, problems, places } = await relinkAll(temporaryFolder(files), noSettings, new Map(), {
    ...{ dryRun: true, moving },
  });
  assert.deepEqual(problems, []);
  return { lines: changes.map(({ file, line, to }) => `${file}:${line} ${to}`), places: [...places] };
}

describe('lines of layouts as files move', () => {
  it('stay where both go together, whatever form the path has', async () => {
    const text = '![](a.jpg)\n![](./a.jpg)\n![](x/../a.jpg)\n![](a%20b.jpg)\n';
    const { lines, places } = await moved({ 'p/t.md': text, 'p/a.jpg': '', 'p/a b.jpg': '' }, 'p', 'q/r');
    assert.deepEqual(lines, []);
    assert.deepEqual(places, [
      ['q/r/a.jpg', 'q/r/t.md:1'],
      ['q/r/a b.jpg', 'q/r/t.md:4'],
    ]);
  });

  it('stay where neither goes, though a name is written in another form of its letters', async () => {
    const files = { 't.md': '![](u\u0308.jpg)', '\u00fc.jpg': '', 'p/b.jpg': '' };
    assert.deepEqual((await moved(files, 'p', 'q')).lines, []);
  });

  it('count from the root of a site or a project where they did', async () => {
    const files = { 'p/t.typ': '#image("/p/a.jpg")\n#image("/b.jpg")\n', 'p/a.jpg': '', 'b.jpg': '' };
    assert.deepEqual((await moved(files, 'p', 'q')).lines, ['p/t.typ:1 /q/a.jpg']);
  });

  it('count from the folder of the document that takes them in', async () => {
    const files = {
      'main.tex': '\\documentclass{book}\\input{p/one}',
      'p/one.tex': '\\includegraphics{p/a}\n\\includegraphics{img/b}\n',
      'p/a.jpg': '',
      'img/b.jpg': '',
    };
    assert.deepEqual((await moved(files, 'p', 'q')).lines, ['p/one.tex:1 q/a.jpg']);
  });

  it('count from that folder once it has another name', async () => {
    const files = {
      'p/main.tex': '\\documentclass{book}\\input{sub/one}',
      'p/sub/one.tex': '\\includegraphics{img/b}\n',
      'p/img/b.jpg': '',
    };
    assert.deepEqual((await moved(files, 'p', 'q')).lines, []);
  });

  it('go on without the folder that a text has its tool look in, as long as that has its name', async () => {
    const text = '\\graphicspath{{img/}}\n\\includegraphics{b}\n';
    const files = { 'p/t.tex': text, 'p/img/b.jpg': '' };
    assert.deepEqual((await moved(files, 'p/img/b.jpg', 'p/img/c.jpg')).lines, ['p/t.tex:2 c.jpg']);
    assert.deepEqual((await moved(files, 'p/img', 'p/prints')).lines, ['p/t.tex:2 prints/b.jpg']);
  });
});
