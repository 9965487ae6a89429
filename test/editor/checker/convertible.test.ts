import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { convertible } from '../../../src/editor/checker/convertible';
import type { PictureReport } from '../../../src/shared/finding';
import type { Encoding, PictureFacts } from '../../../src/shared/picture';
import { greyFacts } from '../../book/support/facts';
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
      unmeant: [],
      coloured: true,
    });
  });

  it('knows whether a way from colour to grey could do anything', async () => {
    const coloured = async (...known: PictureReport[]) =>
      (await convertible([at('good.jpg')], () => known)).coloured;
    const stored = (encoding: Encoding) => picture('one', [], { encoding });
    for (const encoding of ['single-channel', 'bilevel', 'rgb-neutral', 'lab-neutral'] as const)
      assert.equal(await coloured(stored(encoding)), false, encoding);
    for (const encoding of ['rgb-residual', 'rgb-toned', 'black-only', 'four-channel', 'colour'] as const)
      assert.equal(await coloured(stored(encoding)), true, encoding);
    assert.equal(await coloured(stored('single-channel'), stored('colour')), true, 'a page of it');
    assert.equal(await coloured(), true, 'nobody knows');
  });

  it('names among several those whose colour, tone or one bit nobody said to take away', async () => {
    const { chroma } = greyFacts('0');
    const sepia = { encoding: 'rgb-toned' as const, chroma: { ...chroma!, mean: 20 } };
    const cast = { encoding: 'rgb-toned' as const, chroma: { ...chroma!, mean: 4 } };
    const stated = (intent: 'grey' | 'toned' | 'colour', facts: Partial<PictureFacts> = {}) => ({
      ...picture('one', [], facts),
      ...{ intent, intentStated: true },
    });
    const losing = async (one: PictureReport, ...others: string[]) =>
      (await convertible([at('good.jpg'), ...others.map(at)], () => [one])).unmeant
        .filter(({ file }) => file === at('good.jpg'))
        .map(({ loses }) => loses);
    const among = (one: PictureReport) => losing(one, 'stranger.jpg');
    assert.deepEqual(await among(picture('one', [], { encoding: 'colour' })), ['colour']);
    assert.deepEqual(await among(picture('one', [], sepia)), ['tone']);
    assert.deepEqual(await among(picture('one', [], cast)), []);
    assert.deepEqual(await among(picture('one', [], { encoding: 'bilevel' })), ['line']);
    assert.deepEqual(await among(stated('grey', { encoding: 'colour' })), []);
    assert.deepEqual(await among(stated('grey', sepia)), []);
    assert.deepEqual(await among(stated('toned', cast)), ['tone']);
    assert.deepEqual(await among(stated('colour')), ['colour']);
    assert.deepEqual(await losing(picture('one', [], { encoding: 'colour' })), [], 'it alone is meant');
  });
});
