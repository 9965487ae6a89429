import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { Results } from '../../src/remedy/results';
import { unmake } from '../../src/remedy/unmake';
import { temporaryFolder } from '../book/support/folder';
import { book, contents, run, sha } from './book-support';

const nothing = async () => null;

describe('taking results away', () => {
  async function made() {
    const root = temporaryFolder({ 'a.jpg': 'a', 'b.jpg': 'b', 'c.jpg': 'c', 'd.jpg': 'd' });
    const memory = temporaryFolder({});
    const at = (name: string) => path.join(root, name);
    const results = new Results(memory);
    for (const name of ['a', 'b', 'c']) {
      fs.writeFileSync(at(`${name}.grey.jpg`), `grey ${name}`);
      const [source, from, to] = [at(`${name}.jpg`), sha(name), sha(`grey ${name}`)];
      await results.remember(at(`${name}.grey.jpg`), { source, from, to, wish: 'grey' });
    }
    return { memory, at };
  }

  it('takes what is as it was written, and leaves what was changed, or whose picture was, with the reason', async () => {
    const { memory, at } = await made();
    fs.appendFileSync(at('b.grey.jpg'), ', worked on');
    fs.appendFileSync(at('c.jpg'), ', worked on');
    const named = ['a.grey.jpg', 'b.grey.jpg', 'c.grey.jpg', 'd.jpg', 'gone.jpg'].map(at);
    const all = await unmake(memory, named, nothing);
    assert.deepEqual(
      all.map(({ file, reason }) => [path.basename(file), reason?.match(/changed|picture/)?.[0] ?? null]),
      [
        ['a.grey.jpg', null],
        ['b.grey.jpg', 'changed'],
        ['c.grey.jpg', 'picture'],
        ['d.jpg', 'changed'],
      ],
    );
    assert.deepEqual(fs.readdirSync(path.dirname(at('a.jpg'))).sort(), [
      ...['a.jpg', 'b.grey.jpg', 'b.jpg', 'c.grey.jpg', 'c.jpg', 'd.jpg'],
    ]);
  });

  it('finds nothing the second time', async () => {
    const { memory, at } = await made();
    await unmake(memory, [at('a.grey.jpg')], nothing);
    assert.deepEqual(await unmake(memory, [at('a.grey.jpg')], nothing), []);
  });

  it('leaves what something has a use for, and says which', async () => {
    const { memory, at } = await made();
    const neededBy = async (file: string) => (file === at('b.grey.jpg') ? 'book.md:3 places it.' : null);
    const all = await unmake(memory, [at('a.grey.jpg'), at('b.grey.jpg')], neededBy);
    assert.deepEqual(all, [
      { file: at('a.grey.jpg'), reason: null },
      { file: at('b.grey.jpg'), reason: 'book.md:3 places it.' },
    ]);
    assert.deepEqual([fs.existsSync(at('a.grey.jpg')), fs.existsSync(at('b.grey.jpg'))], [false, true]);
  });

  it('leaves what took the place of an earlier result, which nobody could bring back', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'colour 2' });
    await run(root);
    fs.writeFileSync(path.join(root, 'a.jpg'), 'colour 3');
    await run(root);
    const results = ['a', 'b'].map(name => path.join(root, `${name}.rgb-neutral.jpg`));
    const all = await unmake(path.join(root, '.memory'), results, nothing);
    assert.deepEqual(
      all.map(({ reason }) => reason && /took the place of an earlier result/.test(reason)),
      [true, null],
    );
    assert.deepEqual(Object.keys(contents(root)), ['a.jpg', 'a.rgb-neutral.jpg', 'b.jpg']);
  });
});
