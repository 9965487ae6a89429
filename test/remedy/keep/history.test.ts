import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { History } from '../../../src/remedy/keep/history';
import type { Entry } from '../../../src/remedy/keep/journal';
import { keepOf, openKeep } from '../../../src/remedy/keep/place';
import { temporaryFolder } from '../../book/support/folder';

const hash = (letter: string) => letter.repeat(64);

describe('history', () => {
  async function told(...entries: Partial<Entry>[]) {
    const root = temporaryFolder({ 'plates/x.txt': '' });
    const keep = await openKeep(await keepOf(root));
    for (const entry of entries)
      await keep.journal.add({
        ...{ event: 'replacing', path: 'plates/a.jpg', from: hash('a'), to: hash('b') },
        ...{ bytes: 10, mode: 0o644, wish: 'w', at: '' },
        ...entry,
      });
    return { root, history: new History(), at: (name: string) => path.join(root, name) };
  }

  it('knows nothing where nothing was done', async () => {
    const { history, at } = await told();
    assert.equal(await history.resultAt(at('a.jpg'), hash('b')), null);
    assert.equal(await history.lastAt(at('a.jpg')), null);
    assert.equal(await history.mayKnow(at('a.jpg'), 10), false);
  });

  it('knows a result by its content, also where it was moved, and prefers its own path', async () => {
    const { history, at } = await told({ wish: 'own' }, { path: 'copy.jpg', wish: 'copy' });
    const wishAt = async (name: string) => (await history.resultAt(at(name), hash('b')))?.entry.wish;
    assert.equal(await wishAt('plates/a.jpg'), 'own');
    assert.equal(await wishAt('copy.jpg'), 'copy');
    assert.equal(await wishAt('plates/moved.jpg'), 'copy');
    assert.equal(await history.resultAt(at('plates/a.jpg'), hash('c')), null);
  });

  it('knows what was last done at a path, and at which paths of a folder', async () => {
    const { history, at, root } = await told({}, { event: 'restored' }, { path: 'b.jpg' });
    assert.equal((await history.lastAt(at('plates/a.jpg')))?.entry.event, 'restored');
    assert.deepEqual(await history.pathsIn(at('plates')), [at('plates/a.jpg')]);
    assert.deepEqual(await history.pathsIn(root), [at('plates/a.jpg'), at('b.jpg')]);
  });

  it('misses no picture whose original was brought back elsewhere', async () => {
    const { history, at } = await told(
      {},
      { path: 'b.jpg', from: hash('c'), to: hash('d') },
      { event: 'restored', path: 'moved.jpg' },
    );
    const lost = await history.lostFrom([at('plates/a.jpg'), at('b.jpg')], []);
    assert.deepEqual(
      lost.map(({ file, last }) => [file, last.entry.from]),
      [[at('b.jpg'), hash('c')]],
    );
    assert.deepEqual(await history.lostFrom([at('b.jpg')], [hash('c')]), []);
  });

  it('misses a picture that is gone though another that was like it was brought back', async () => {
    const alike = { path: 'b.jpg' };
    const { history, at } = await told({}, alike, { event: 'restored' });
    const lost = await history.lostFrom([at('plates/a.jpg'), at('b.jpg')], []);
    assert.deepEqual(
      lost.map(({ file }) => file),
      [at('b.jpg')],
    );
  });

  it('moves with the folder it is in', async () => {
    const { root } = await told({});
    const moved = path.join(temporaryFolder(), 'moved');
    fs.cpSync(root, moved, { recursive: true });
    const known = await new History().resultAt(path.join(moved, 'plates/a.jpg'), hash('b'));
    assert.equal(known?.keep.top, moved);
  });
});
