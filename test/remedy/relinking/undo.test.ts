import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { book, contents, run, undo } from '../book-support';

const NOTHING = { changes: [], settings: [], problems: [] };

describe('undoing what layouts were made to place', () => {
  const layout = '# Plates\n\n![one](./x/a.jpg)\n![two](<b c.jpg>)\n';
  const files = { 'x/a.jpg': 'colour 1', 'b c.jpg': 'colour 2', 'book.md': layout };

  async function relinked() {
    const root = book(files);
    await run(root, { relink: true });
    assert.match(contents(root)['book.md'], /x\/a\.rgb-neutral\.jpg.*b c\.rgb-neutral\.jpg/s);
    return { root, at: (name: string) => path.join(root, name) };
  }

  it('puts them back to the byte, and finds nothing the second time', async () => {
    const { root } = await relinked();
    const planned = await undo(root, { dryRun: true });
    assert.notEqual(contents(root)['book.md'], layout);
    const { relinking } = await undo(root);
    assert.deepEqual(relinking, planned.relinking);
    assert.deepEqual(
      relinking!.changes.map(({ line, to }) => [line, to]),
      [
        [3, './x/a.jpg'],
        [4, 'b c.jpg'],
      ],
    );
    assert.equal(contents(root)['book.md'], layout);
    assert.deepEqual((await undo(root)).relinking, { ...NOTHING, placedBefore: 2 });
  });

  it('only tells the lines where an editor has the texts, by what is not saved', async () => {
    const { root, at } = await relinked();
    const stored = contents(root)['book.md'];
    const open = new Map([['book.md', `New.\n${stored}`]]);
    const { relinking } = await undo(root, { paths: [at('x')], open });
    assert.deepEqual(
      relinking!.changes.map(({ line, from, to }) => [line, from, to]),
      [[4, './x/a.rgb-neutral.jpg', './x/a.jpg']],
    );
    assert.equal(contents(root)['book.md'], stored);
  });

  it('puts back what is named, wherever its line has moved', async () => {
    const { root, at } = await relinked();
    fs.writeFileSync(at('book.md'), `New.\n\n${contents(root)['book.md']}`);
    await undo(root, { paths: [at('x')] });
    assert.match(
      contents(root)['book.md'],
      /^New\.\n\n# Plates\n\n!\[one\]\(\.\/x\/a\.jpg\).*b c\.rgb-neutral/s,
    );
  });

  it('leaves what somebody else wrote, and a line whose original is gone, and says so', async () => {
    const { root, at } = await relinked();
    fs.appendFileSync(at('book.md'), '![mine](./x/a.rgb-neutral.jpg)\n');
    fs.rmSync(at('b c.jpg'));
    const { relinking } = await undo(root);
    assert.deepEqual(
      relinking!.problems.map(({ line, why }) => [
        line,
        why.includes('did not write'),
        why.includes('not there'),
      ]),
      [
        [4, false, true],
        [5, true, false],
      ],
    );
    assert.equal(
      contents(root)['book.md'],
      '# Plates\n\n![one](./x/a.jpg)\n![two](<b c.rgb-neutral.jpg>)\n![mine](./x/a.rgb-neutral.jpg)\n',
    );
  });

  describe('with settings that name the pictures', () => {
    const settings = '{ "spreads": [["x\\/a.jpg", // left\n"b c.jpg"]] }\n';
    const after = '{ "spreads": [["x/a.rgb-neutral.jpg", // left\n"b c.rgb-neutral.jpg"]] }\n';

    async function followed() {
      const root = book({ ...files, 'evengrey.json': settings });
      await run(root, { relink: true });
      assert.equal(contents(root)['evengrey.json'], after);
      return { root, at: (name: string) => path.join(root, name) };
    }

    it('puts them back to the byte, too', async () => {
      const { root } = await followed();
      const planned = await undo(root, { dryRun: true });
      assert.equal(contents(root)['evengrey.json'], after);
      const { relinking } = await undo(root);
      assert.deepEqual(relinking, planned.relinking);
      assert.deepEqual(
        relinking!.settings.map(({ line, to, picture }) => [line, to, picture]),
        [
          [1, 'x\\/a.jpg', 'x/a.jpg'],
          [2, 'b c.jpg', 'b c.jpg'],
        ],
      );
      assert.equal(contents(root)['evengrey.json'], settings);
      assert.deepEqual((await undo(root)).relinking, { ...NOTHING, placedBefore: 2 });
    });

    it('of one picture that is named puts back its name alone', async () => {
      const { root, at } = await followed();
      await undo(root, { paths: [at('x')] });
      assert.equal(contents(root)['evengrey.json'], after.replace('x/a.rgb-neutral.jpg', 'x\\/a.jpg'));
    });

    it('leaves the name of a result that a line still places, and says so', async () => {
      const { root, at } = await followed();
      fs.appendFileSync(at('book.md'), '![mine](./x/a.rgb-neutral.jpg)\n');
      const { relinking } = await undo(root);
      assert.deepEqual(
        relinking!.problems.map(({ file, line, why }) => [
          file,
          line,
          why.includes('book.md:5 still places'),
        ]),
        [
          ['book.md', 5, false],
          ['evengrey.json', 1, true],
        ],
      );
      assert.equal(contents(root)['evengrey.json'], after.replace('b c.rgb-neutral', 'b c'));
    });
  });

  it('has nothing to say where nothing was relinked', async () => {
    assert.equal((await undo(book(files))).relinking, null);
  });
});
