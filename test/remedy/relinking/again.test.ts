import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { temporaryFolder } from '../../book/support/folder';
import { book, contents, fakeConverters, outcomes, run, undo } from '../book-support';
import { wishFor } from '../support';

const neutral = wishFor({ quality: 90 });
const single = wishFor({ to: 'single-channel', quality: 90 });
const layout = '![one](./x/a.jpg)\n![two](<b c.jpg>)\n';
const settings = '{ "spreads": [["x\\/a.jpg", "b c.jpg"]] }\n';
const files = { 'x/a.jpg': 'colour 1', 'b c.jpg': 'colour 2', 'book.md': layout, 'evengrey.json': settings };
const into = (root: string, folder: string) =>
  ({ kind: 'folder', folder: path.join(root, folder), shown: folder }) as const;

describe('layouts that place results, when the book is converted again', () => {
  it('have every line moved to the newer result, and undoing brings the first one back', async () => {
    const root = book(files);
    await run(root, { wish: neutral, relink: true });
    const planned = await run(root, { wish: single, relink: true, dryRun: true });
    const { relinking } = await run(root, { wish: single, relink: true });
    assert.deepEqual(planned.relinking, relinking);
    assert.deepEqual([relinking!.changes.length, relinking!.settings.length], [2, 2]);
    assert.deepEqual(relinking!.problems, []);
    const now = contents(root);
    assert.equal(now['book.md'], '![one](./x/a.single-channel.jpg)\n![two](<b c.single-channel.jpg>)\n');
    assert.equal(
      now['evengrey.json'],
      '{ "spreads": [["x/a.single-channel.jpg", "b c.single-channel.jpg"]] }\n',
    );
    // and to and fro
    await run(root, { wish: neutral, relink: true });
    await run(root, { wish: single, relink: true });
    assert.deepEqual(contents(root), now);
    await undo(root);
    assert.deepEqual([contents(root)['book.md'], contents(root)['evengrey.json']], [layout, settings]);
  });

  it('have a result left where it is that somebody worked on since, and are told so', async () => {
    const root = book(files);
    await run(root, { wish: neutral, relink: true });
    fs.appendFileSync(path.join(root, 'x/a.rgb-neutral.jpg'), ' retouched');
    const { relinking } = await run(root, { wish: single, relink: true });
    assert.deepEqual(
      relinking!.problems.map(({ file, line, why }) => [file, line, /changed since it was made/.test(why)]),
      [['book.md', 1, true]],
    );
    assert.match(contents(root)['book.md'], /a\.rgb-neutral\.jpg.*c\.single-channel\.jpg/s);
  });

  it('have one left where it is that nothing says to be a result', async () => {
    const root = book({
      'a.jpg': 'colour 1',
      'a.rgb-neutral.jpg': 'colour 2',
      'book.md': '![](a.rgb-neutral.jpg)',
    });
    const { relinking } = await run(root, { wish: single, relink: true, paths: [path.join(root, 'a.jpg')] });
    assert.match(relinking!.problems[0].why, /nothing says that it is one/);
    assert.equal(contents(root)['book.md'], '![](a.rgb-neutral.jpg)');
  });

  it('go back to a picture that has become right itself', async () => {
    const root = book(files);
    await run(root, { wish: neutral, relink: true });
    fs.writeFileSync(path.join(root, 'x/a.jpg'), 'single-channel 1');
    await run(root, { wish: single, relink: true });
    assert.match(contents(root)['book.md'], /x\/a\.jpg.*c\.single-channel\.jpg/s);
    const { relinking } = await undo(root);
    assert.deepEqual(relinking!.problems, []);
    assert.equal(contents(root)['book.md'], layout);
    assert.equal(contents(root)['evengrey.json'], settings.replace('\\/', '/'));
  });

  it('take in no picture that only is called alike', async () => {
    const root = book({ ...files, 'x/a.png': 'colour 3' });
    for (let i = 0; i < 2; i++) {
      const converters = fakeConverters();
      const { conversions, notices } = await run(root, { wish: neutral, relink: true, converters });
      assert.deepEqual(
        conversions.map(({ path: at }) => at),
        ['b c.jpg', 'x/a.jpg'],
      );
      assert.match(notices.join(), /left out, since no layout places it: x\/a\.png/);
      assert.equal(converters.tasks.length, i ? 0 : 2);
    }
  });

  it('are whole with results in a folder of the book: those that were right are placed there, too', async () => {
    const root = book({ ...files, 'b c.jpg': 'rgb-neutral 2' });
    const place = into(root, 'out');
    await run(root, { wish: neutral, relink: true, place });
    assert.match(contents(root)['book.md'], /out\/x\/a\.jpg.*out\/b c\.jpg/s);
    const after = contents(root);
    const again = await run(root, { wish: neutral, relink: true, place });
    assert.deepEqual(outcomes(again.conversions), { 'b c.jpg': 'skipped', 'x/a.jpg': 'skipped' });
    assert.deepEqual(contents(root), after);
    fs.writeFileSync(path.join(root, 'x/a.jpg'), 'colour anew');
    const anew = await run(root, { wish: neutral, relink: true, place });
    assert.deepEqual(outcomes(anew.conversions), { 'b c.jpg': 'skipped', 'x/a.jpg': 'converted' });
    const other = await run(root, { wish: single, relink: true, place: into(root, 'grey') });
    assert.deepEqual(other.relinking!.problems, []);
    assert.match(contents(root)['book.md'], /grey\/x\/a\.jpg.*grey\/b c\.jpg/s);
    await undo(root);
    assert.equal(contents(root)['book.md'], layout);
  });
});

describe('what was relinked', () => {
  it('is known with another cache, in a folder that was moved and in a repository, to this book alone', async () => {
    for (const git of [false, true]) {
      const outer = temporaryFolder({});
      if (git) execFileSync('git', ['init', '-q', outer]);
      const at = (name: string) => path.join(outer, name);
      fs.cpSync(book(files), at('one'), { recursive: true });
      await run(at('one'), { relink: true, memory: temporaryFolder({}) });
      const text = contents(at('one'))['book.md'];
      fs.cpSync(at('one'), at('copy'), { recursive: true, filter: name => !name.endsWith('.evengrey') });
      assert.equal(fs.existsSync(at('one/.evengrey')), !git);
      await undo(at('copy'));
      assert.equal(contents(at('copy'))['book.md'], text);
      fs.renameSync(at('one'), at('moved'));
      await undo(at('moved'));
      assert.equal(contents(at('moved'))['book.md'], layout);
      assert.equal(contents(at('moved'))['evengrey.json'], settings);
    }
  });

  it('is not known in a copy, which is told once a layout', async () => {
    const root = book({ ...files, 'c.jpg': 'rgb-neutral 3', 'own.md': '![](c.jpg)\n' });
    await run(root, { relink: true });
    fs.rmSync(path.join(root, '.evengrey'), { recursive: true });
    const { relinking } = await undo(root);
    assert.deepEqual(
      relinking!.problems.map(({ file, line }) => [file, line]),
      [['book.md', 1]],
    );
    assert.match(relinking!.problems[0].why, /^It and 1 more line place results.*not known here.*with git/);
    assert.equal((await undo(root, { paths: [path.join(root, 'own.md')] })).relinking, null);
  });

  it('stays where a layout may not be written, and is told so', async () => {
    const root = book(files);
    await run(root, { relink: true });
    const file = path.join(root, 'book.md');
    fs.chmodSync(file, 0o444);
    const { relinking } = await undo(root);
    assert.deepEqual(
      relinking!.problems.filter(({ line }) => line === null),
      [{ file: 'book.md', line: null, why: 'It is write-protected.' }],
    );
    fs.chmodSync(file, 0o644);
    await undo(root);
    assert.equal(contents(root)['book.md'], layout);
  });

  it('is changed in no layout where it cannot be remembered', async () => {
    const root = book({ ...files, '.evengrey': 'a file' });
    const { relinking } = await run(root, { relink: true });
    assert.match(relinking!.problems[0].why, /could not be remembered/);
    assert.equal(contents(root)['book.md'], layout);
  });
});
