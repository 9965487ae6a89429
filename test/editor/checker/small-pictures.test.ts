import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { SmallPictures } from '../../../src/editor/checker/small-pictures';
import type { SmallPicture } from '../../../src/shared/reader-protocol';
import { brokenFacts } from '../../book/support/facts';
import { picture } from '../../report/text/support';

describe('small pictures of a book', () => {
  const root = fs.mkdtempSync(path.join(os.tmpdir(), 'small-pictures-'));
  after(() => fs.rmSync(root, { recursive: true }));
  const { signal } = new AbortController();

  const of = (name: string, content = name) => {
    fs.writeFileSync(path.join(root, name), content);
    return picture(name, [], { sha256: createHash('sha256').update(content).digest('hex') });
  };

  /** Reads nothing, and knows what it was asked for. */
  function readers() {
    const asked: string[] = [];
    return {
      asked,
      async small(file: string): Promise<SmallPicture[]> {
        asked.push(path.basename(file));
        if (file.endsWith('bad.tif')) throw new Error('It is cut off.');
        return [{ type: 'image/jpeg', bytes: Buffer.alloc(10), fullWidth: 6, fullHeight: 4 }];
      },
    };
  }

  it('are decoded once, whatever the file is called', async () => {
    const pool = readers();
    const small = new SmallPictures(pool);
    const first = await small.of(root, of('a.tif', 'same'), signal);
    assert.deepEqual(await small.of(root, of('b.tif', 'same'), signal), first);
    assert.deepEqual(pool.asked, ['a.tif']);
  });

  it('are not kept under another content than was read', async () => {
    const pool = readers();
    const small = new SmallPictures(pool);
    const checked = of('c.tif', 'before');
    of('c.tif', 'after');
    await small.of(root, checked, signal);
    await small.of(root, checked, signal);
    assert.deepEqual(pool.asked, ['c.tif', 'c.tif']);
  });

  it('give way to others when there are too many, the one not seen for longest first', async () => {
    const pool = readers();
    const small = new SmallPictures(pool, 25);
    const [a, b, c] = ['a.tif', 'b.tif', 'c.tif'].map(name => of(name));
    for (const each of [a, b, a, c, a, b]) await small.of(root, each, signal);
    assert.deepEqual(pool.asked, ['a.tif', 'b.tif', 'c.tif', 'b.tif']);
  });

  it('say why one cannot be shown', async () => {
    const small = new SmallPictures(readers());
    assert.deepEqual(await small.of(root, of('bad.tif'), signal), { trouble: 'It is cut off.' });
    const broken = picture('x.tif', [], brokenFacts('truncated'));
    const { text } = broken.facts.unreadable!;
    assert.deepEqual(await small.of(root, broken, signal), { trouble: text });
  });
});
