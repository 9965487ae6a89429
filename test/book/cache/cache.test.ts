import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { FactsCache } from '../../../src/book/cache/cache';
import type { Stamp } from '../../../src/book/cache/stamp';
import { greyFacts } from '../support/facts';
import { temporaryFolder } from '../support/folder';

const sha = (letter: string) => letter.repeat(64);
const stamp = (size: number): Stamp => ({ size, mtime: 1_500_000_001n, ctime: 1_500_000_001n, inode: 7n });
const later = 1_000_000_000_000n;

function place() {
  const root = temporaryFolder();
  const folder = temporaryFolder();
  const file = () => path.join(folder, 'books', fs.readdirSync(path.join(folder, 'books'))[0]);
  return { open: (version = 'one') => FactsCache.open(folder, root, version), file, folder };
}

describe('cache of facts', () => {
  it('gives back what was kept, in another process too', async () => {
    const { open } = place();
    const first = await open();
    first.remember('a b/ä.jpg', stamp(3), later, sha('a'), [greyFacts(sha('a'))]);
    await first.save();
    assert.equal(first.trouble, null);
    const second = await open();
    assert.deepEqual(second.facts(sha('a')), [greyFacts(sha('a'))]);
    assert.equal(second.lookUp('a b/ä.jpg', stamp(3))?.sha256, sha('a'));
    assert.equal(second.lookUp('a b/ä.jpg', { ...stamp(3), inode: 8n }), null);
    assert.equal(second.lookUp('b.jpg', stamp(3)), null);
    assert.ok(second.knowsSize(3));
  });

  it('adds lines, the last of which holds', async () => {
    const { open, file } = place();
    for (const letter of ['a', 'b', 'c']) {
      const cache = await open();
      cache.remember('x.jpg', stamp(letter.charCodeAt(0)), later, sha(letter), [greyFacts(sha(letter))]);
      await cache.save();
    }
    assert.equal(fs.readFileSync(file(), 'utf8').match(/\["file"/g)?.length, 3);
    const cache = await open();
    assert.equal(cache.lookUp('x.jpg', stamp('c'.charCodeAt(0)))?.sha256, sha('c'));
    assert.equal(cache.lookUp('x.jpg', stamp('a'.charCodeAt(0))), null);
  });

  it('can be saved again and again', async () => {
    const { open, file } = place();
    const cache = await open();
    const sizes: number[] = [];
    for (const letter of ['a', 'b', 'c']) {
      cache.remember(`${letter}.jpg`, stamp(1), later, sha(letter), [greyFacts(sha(letter))]);
      await cache.save();
      await cache.save();
      sizes.push(fs.statSync(file()).size);
    }
    assert.ok(sizes[0] < sizes[1] && sizes[1] < sizes[2]);
    assert.equal(fs.readFileSync(file(), 'utf8').match(/\["facts"/g)?.length, 3);
    assert.ok((await open()).facts(sha('c')));
  });

  it('keeps versions apart', async () => {
    const { open } = place();
    const one = await open('one');
    one.remember('x.jpg', stamp(1), later, sha('a'), [greyFacts(sha('a'))]);
    await one.save();
    assert.equal((await open('two')).facts(sha('a')), null);
  });

  it('lives on whatever happens to its file', async () => {
    const { open, file } = place();
    const cache = await open();
    for (const letter of ['a', 'b'])
      cache.remember(`${letter}.jpg`, stamp(1), later, sha(letter), [greyFacts(sha(letter))]);
    await cache.save();
    const whole = fs.readFileSync(file());
    const damages: [string, Buffer, number][] = [
      ['cut in the middle of the last line', whole.subarray(0, whole.length - 40), 1],
      ['one digit changed', Buffer.from(whole.toString().replace('53.6', '53.7')), 1],
      ['something else', Buffer.from('PK\u0003\u0004 no cache at all\n{}\n'), 0],
      ['zeros', Buffer.alloc(5000), 0],
      ['empty', Buffer.alloc(0), 0],
    ];
    for (const [what, bytes, alive] of damages) {
      fs.writeFileSync(file(), bytes);
      const damaged = await open();
      const found = ['a', 'b'].filter(letter => damaged.facts(sha(letter)));
      assert.equal(found.length, alive, what);
      damaged.remember('c.jpg', stamp(1), later, sha('c'), [greyFacts(sha('c'))]);
      await damaged.save();
      assert.ok((await open()).facts(sha('c')), what);
    }
  });

  it('does not lose what another process added meanwhile', async () => {
    const { open } = place();
    await (async () => {
      const seed = await open();
      seed.remember('s.jpg', stamp(1), later, sha('e'), [greyFacts(sha('e'))]);
      await seed.save();
    })();
    const [one, two] = [await open(), await open()];
    one.remember('a.jpg', stamp(1), later, sha('a'), [greyFacts(sha('a'))]);
    two.remember('b.jpg', stamp(1), later, sha('b'), [greyFacts(sha('b'))]);
    await Promise.all([one.save(), two.save()]);
    const both = await open();
    assert.ok(both.facts(sha('a')) && both.facts(sha('b')) && both.facts(sha('e')));
  });

  it('is written anew without what is not used any more', async () => {
    const { open, file } = place();
    const cache = await open();
    for (let i = 0; i < 1200; i++) {
      const hash = i.toString(16).padStart(64, '0');
      cache.remember(`${i}.jpg`, stamp(1), later, hash, [greyFacts(hash)]);
    }
    await cache.save();
    const before = fs.statSync(file()).size;
    const second = await open();
    second.retain(['7.jpg']);
    second.remember('new.jpg', stamp(1), later, sha('a'), [greyFacts(sha('a'))]);
    await second.save();
    assert.ok(fs.statSync(file()).size < before / 100);
    const third = await open();
    assert.ok(third.facts((7).toString(16).padStart(64, '0')) && third.facts(sha('a')));
    assert.equal(third.facts((8).toString(16).padStart(64, '0')), null);
  });

  it('says so where nothing can be written, and throws nothing', async () => {
    const { folder, open } = place();
    fs.writeFileSync(path.join(folder, 'books'), 'a file where the folder should be');
    const cache = await open();
    cache.remember('a.jpg', stamp(1), later, sha('a'), [greyFacts(sha('a'))]);
    await cache.save();
    assert.match(cache.trouble ?? '', /EEXIST|ENOTDIR/);
  });
});
