import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { convertible } from '../../../src/editor/checker/convertible';
import { picture } from '../../report/text/support';

describe('what can be converted of what was chosen', () => {
  let dir: string;
  const at = (name: string) => path.join(dir, name);

  before(async () => {
    dir = await fs.mkdtemp(path.join(os.tmpdir(), 'convertible-'));
    for (const name of ['good.jpg', 'broken.jpg', 'stranger.jpg']) await fs.writeFile(at(name), name);
    await fs.mkdir(at('folder'));
  });
  after(() => fs.rm(dir, { recursive: true }));

  it('leaves out what is not there and what cannot be read, each with its reason', async () => {
    const unreadable = { reason: 'truncated' as const, text: 'It ends too early.' };
    const known = [
      picture('pictures/good.jpg'),
      picture('pictures/broken.jpg', [], { encoding: 'unreadable', unreadable }),
      picture('pictures/missing.jpg', [], {
        encoding: 'unreadable',
        unreadable: { reason: 'missing', text: 'x' },
      }),
    ];
    const pagesOf = (file: string) => known.filter(one => path.basename(one.path) === path.basename(file));
    const named = ['good.jpg', 'broken.jpg', 'missing.jpg', 'stranger.jpg', 'folder', 'gone.jpg'].map(at);
    assert.deepEqual(await convertible(named, pagesOf), {
      paths: ['good.jpg', 'stranger.jpg', 'folder'].map(at),
      left: [
        { path: 'pictures/broken.jpg', reason: 'It ends too early.' },
        { path: 'pictures/missing.jpg', reason: 'There is no such file.' },
        { path: at('gone.jpg'), reason: 'There is no such file.' },
      ],
    });
  });
});
