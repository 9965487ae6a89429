import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { readFacts } from '../../src/picture/read';
import { chunk } from './bytes';
import { type Known, known, refused } from './known';

const folder = 'test/picture/known';

/** Least and largest native value of each channel over the pixels that can be seen at all. */
function extremes({ width, height, channels, alpha, value }: Known): number[][] {
  const found = Array.from({ length: channels }, () => [Infinity, -Infinity]);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (alpha && value(x, y, channels) === 0) continue;
      for (let c = 0; c < channels; c++) {
        const v = value(x, y, c);
        found[c] = [Math.min(found[c][0], v), Math.max(found[c][1], v)];
      }
    }
  return found;
}

describe('readFacts', () => {
  for (const expected of known.filter(k => k.space !== 'lab')) {
    const { file, page = 1, within = 0 } = expected;
    it(`knows the extremes of ${file}${page > 1 ? ` page ${page}` : ''}`, async () => {
      const facts = (await readFacts({ file: path.join(folder, file) })).find(f => f.page === page)!;
      assert.equal(facts.unreadable, null);
      assert.deepEqual(
        [facts.format, facts.width, facts.height, facts.channels, facts.bits, facts.alpha, facts.palette],
        [
          expected.format,
          expected.width,
          expected.height,
          expected.channels,
          expected.bits,
          expected.alpha ?? false,
          expected.palette ?? false,
        ],
      );
      extremes(expected).forEach(([least, most], c) => {
        const { min, max } = facts.levels[c];
        assert.ok(Math.abs(min - least) <= within && Math.abs(max - most) <= within, `${c}: ${min}-${max}`);
      });
    });
  }

  it('gives a file of several pages one entry for each picture, under one hash', async () => {
    const file = path.join(folder, 'pages.tif');
    const facts = await readFacts({ file });
    assert.deepEqual(
      facts.map(f => f.page),
      [1, 2, 4],
    );
    const sha256 = createHash('sha256').update(fs.readFileSync(file)).digest('hex');
    assert.ok(facts.every(f => f.sha256 === sha256));
    assert.equal((await readFacts({ file, sha256: 'known' }))[0].sha256, 'known');
  });

  it('is told the size of its task before it begins', async () => {
    const sizes: number[][] = [];
    await readFacts({ file: path.join(folder, 'grey.jpg') }, (...size) => sizes.push(size));
    const bytes = fs.statSync(path.join(folder, 'grey.jpg')).size;
    assert.deepEqual(sizes, [
      [bytes, 0],
      [bytes, (32 * 16) / 1e6],
    ]);
  });
});

describe('what cannot be read', () => {
  const temporary = fs.mkdtempSync(path.join(os.tmpdir(), 'read-'));
  after(() => fs.rmSync(temporary, { recursive: true }));

  async function reason(name: string, bytes: Buffer): Promise<string> {
    const file = path.join(temporary, name);
    fs.writeFileSync(file, bytes);
    const facts = await readFacts({ file });
    assert.equal(facts[0].encoding, 'unreadable');
    assert.match(facts[0].sha256, /^[0-9a-f]{64}$/);
    assert.ok(facts[0].unreadable!.text.length > 20);
    return facts[0].unreadable!.reason;
  }

  function png(width: number, height: number, depth: number, type: number, rows = Buffer.alloc(0)): Buffer {
    const head = Buffer.alloc(13);
    head.writeUInt32BE(width, 0);
    head.writeUInt32BE(height, 4);
    head.set([depth, type], 8);
    const mark = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
    const parts = [chunk('IHDR', head), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))];
    return Buffer.concat([mark, ...parts]);
  }

  it('is named with its reason', async () => {
    assert.equal(await reason('text.jpg', Buffer.from('no picture at all')), 'format');
    assert.equal(await reason('giant.png', png(60000, 60000, 8, 0)), 'too-large');
    assert.equal(await reason('heavy.png', png(16000, 16000, 16, 6)), 'too-large');
    assert.equal(await reason('zero.png', png(0, 10, 8, 0)), 'corrupt');
    const pointer = `version https://git-lfs.github.com/spec/v1\noid sha256:${'a'.repeat(64)}\nsize 3\n`;
    assert.equal(await reason('pointer.jpg', Buffer.from(pointer)), 'not-fetched');
  });

  it('is what has nothing to print', async () => {
    const grey = (alpha: number) => ({
      create: { width: 9, height: 9, channels: 4 as const, background: { r: 90, g: 90, b: 90, alpha } },
    });
    for (const format of ['png', 'tiff'] as const) {
      const bytes = (alpha: number) => sharp(grey(alpha)).toFormat(format, { compression: 'lzw' }).toBuffer();
      assert.equal(await reason('clear', await bytes(0)), 'empty');
      fs.writeFileSync(path.join(temporary, 'faint'), await bytes(0.02));
      assert.equal((await readFacts({ file: path.join(temporary, 'faint') }))[0].encoding, 'rgb-neutral');
    }
  });

  it('names the limit that was exceeded', async () => {
    fs.writeFileSync(path.join(temporary, 'giant.png'), png(60000, 60000, 8, 0));
    const [{ unreadable, width, format }] = await readFacts({ file: path.join(temporary, 'giant.png') });
    assert.match(unreadable!.text, /3600 megapixels; the limit is 268/);
    assert.deepEqual([width, format], [60000, 'png']);
  });

  it('is called cut wherever it is cut', async () => {
    const names = [
      'grey.jpg',
      'turned.jpg',
      'rgb16.png',
      'palette8.png',
      'cmyk8-lzw.tif',
      'cmyk16-tiled.tif',
    ];
    for (const name of [
      ...names,
      'cmyk8-jpeg.tif',
      'palette.gif',
      'rgb-alpha.webp',
      'rgb.avif',
      'palette4.tif',
    ]) {
      const bytes = fs.readFileSync(path.join(folder, name));
      for (const share of [0.4, 0.6, 0.8])
        assert.equal(
          await reason(name, bytes.subarray(0, bytes.length * share)),
          'truncated',
          `${name} ${share}`,
        );
    }
  });

  it('keeps what its header says', async () => {
    for (const { file, format } of refused) {
      const [facts] = await readFacts({ file: path.join(folder, file) });
      assert.deepEqual([facts.format, facts.unreadable?.reason], [format, 'format']);
    }
    const [document] = await readFacts({ file: path.join(folder, 'picture.psd') });
    assert.deepEqual(
      [document.width, document.height, document.channels, document.bits, document.space],
      [20, 12, 3, 8, 'rgb'],
    );
  });

  it('has no hash where it could not be opened', async () => {
    const [facts] = await readFacts({ file: path.join(temporary, 'nothing-here') });
    assert.deepEqual([facts.unreadable?.reason, facts.sha256], ['missing', '']);
  });
});
