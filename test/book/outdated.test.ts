import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { FactsCache } from '../../src/book/cache/cache';
import { outdatedNotices, withChangedOriginals } from '../../src/book/outdated';
import type { BookPicture } from '../../src/shared/finding';
import { brokenFacts, greyFacts } from './support/facts';
import { temporaryFolder } from './support/folder';

const hash = (text: string) => createHash('sha256').update(text).digest('hex');
const from = (text: string) => ({
  remedied: { from: hash(text), to: 'rgb-neutral' as const, toned: false, fitted: false },
});
/** A copy of `text`, beside pictures that hold what is said. */
const copy = (path: string, text: string) => ({
  path,
  facts: [greyFacts(hash(`copy of ${text}`), from(text))],
});

function folderOf(files: Record<string, string>) {
  const root = temporaryFolder(files);
  return Object.keys(files).map(name => ({ path: name, file: path.join(root, name), obstacle: null }));
}

const originals = async (...[read, all, how]: Parameters<typeof withChangedOriginals>) =>
  (await withChangedOriginals(read, all, how)).map(({ changedOriginal }) => changedOriginal ?? null);

describe('a converted copy', () => {
  it('is of an earlier state where the picture whose name it carries holds another content', async () => {
    const all = folderOf({ 'p/a.jpg': 'new', 'b.png': 'same', 'a.jpg': 'old' });
    const read = [
      copy('p/a.rgb-neutral.jpg', 'old'),
      copy('b.png.rgb-neutral.tif', 'same'),
      copy('c.rgb-neutral.jpg', 'gone'),
      copy('p/named-otherwise.jpg', 'old'),
      { path: 'p/a.black-only.jpg', facts: [greyFacts(hash('by hand'))] },
      { path: 'p/a.single-channel.jpg', facts: [{ ...brokenFacts('truncated'), ...from('old') }] },
    ];
    assert.deepEqual(await originals(read, all, { cache: null }), ['p/a.jpg', ...Array(5).fill(null)]);
  });

  it('goes by what was read of an original, by what is remembered of its file, and else by its bytes', async () => {
    const all = folderOf({ 'a.jpg': 'on disk' });
    const read = [copy('a.rgb-neutral.jpg', 'as read')];
    const asRead = { path: 'a.jpg', facts: [greyFacts(hash('as read'))] };
    assert.deepEqual(await originals([...read, asRead], all, { cache: null }), [null, null]);

    const root = path.dirname(all[0].file);
    const cache = await FactsCache.open(temporaryFolder(), root, 'v'.repeat(12));
    const past = new Date(Date.now() - 60_000);
    fs.utimesSync(all[0].file, past, past);
    await new Promise(resolve => setTimeout(resolve, 150));
    assert.deepEqual(await originals(read, all, { cache }), ['a.jpg']);
    // of a file whose stamp is known nothing is read
    fs.chmodSync(all[0].file, 0o644);
    const { size } = fs.statSync(all[0].file);
    assert.ok(cache.knowsSize(size) && cache.knowsFile('a.jpg'));
    assert.equal(cache.facts(hash('on disk')), null, 'it was not read as a picture');
    assert.deepEqual(await originals(read, all, { cache }), ['a.jpg']);
  });

  it('says nothing of an original that is not there any more, or is no file', async () => {
    const all = folderOf({ 'a.jpg': 'new', 'b.jpg': 'new' });
    fs.rmSync(all[0].file);
    const obstacle = { reason: 'not-a-file' as const, text: '' };
    const read = [copy('a.rgb-neutral.jpg', 'old'), copy('b.rgb-neutral.jpg', 'old')];
    const seen = [all[0], { ...all[1], obstacle }];
    assert.deepEqual(await originals(read, seen, { cache: null }), [null, null]);
  });

  it('that is outdated is told in a sentence, several in one', () => {
    const of = (name: string, page = 1) =>
      ({
        path: `${name}.rgb-neutral.tif`,
        facts: { page },
        changedOriginal: `${name}.tif`,
      }) as BookPicture;
    const other = { path: 'x.tif', facts: { page: 1 } } as BookPicture;
    assert.deepEqual(outdatedNotices([other]), []);
    assert.deepEqual(outdatedNotices([other, of('a'), of('a', 2)]), [
      'The book has an earlier state of a.tif: a.rgb-neutral.tif was made of it, and it was changed since. Convert it again.',
    ]);
    assert.deepEqual(outdatedNotices(['a', 'b', 'c', 'd', 'e', 'f'].map(name => of(name))), [
      'The book has earlier states of 6 pictures, which were changed after they were converted: a.tif by a.rgb-neutral.tif, b.tif by b.rgb-neutral.tif, c.tif by c.rgb-neutral.tif, d.tif by d.rgb-neutral.tif, e.tif by e.rgb-neutral.tif and 1 more. Convert them again.',
    ]);
  });
});
