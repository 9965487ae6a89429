import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { decode, readsAnotherWay } from '../../src/picture/decode';
import { bufferSource, readHeader } from '../../src/picture/header';
import type { Samples } from '../../src/picture/types';
import { type Known, known } from './known';

const folder = 'test/picture/known';

/** Native units: see `Samples`. */
function native(value: number, bits: number, { data, space }: Samples): number {
  if (data instanceof Float32Array || space === 'lab') return value;
  const full = data instanceof Uint8Array ? 255 : 65535;
  return (value * (2 ** bits - 1)) / full;
}

function compare(samples: Samples, expected: Known): void {
  const { channels, alpha = false, width, height, bits, within = 0 } = expected;
  assert.deepEqual(
    { width: samples.width, height: samples.height, channels: samples.channels, alpha: samples.alpha },
    { width, height, channels, alpha },
  );
  const step = channels + (alpha ? 1 : 0);
  assert.equal(samples.data.length, width * height * step);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < step; c++) {
        const stored = native(samples.data[(y * width + x) * step + c], bits, samples);
        const wanted = expected.value(x, y, c);
        if (Math.abs(stored - wanted) > within) assert.equal(stored, wanted, `pixel ${x},${y} channel ${c}`);
      }
}

describe('decode', () => {
  for (const expected of known) {
    const { file, page = 1 } = expected;
    it(`reads ${file}${page > 1 ? ` page ${page}` : ''} exactly`, async () => {
      const bytes = fs.readFileSync(path.join(folder, file));
      compare(await decode(bytes, readHeader(bufferSource(bytes), page)), expected);
    });
  }

  it('reads the same from a path as from bytes', async () => {
    for (const { file, page = 1 } of known) {
      const bytes = fs.readFileSync(path.join(folder, file));
      const header = readHeader(bufferSource(bytes), page);
      if (readsAnotherWay(header)) continue;
      assert.deepEqual(await decode(path.join(folder, file), header), await decode(bytes, header), file);
    }
  });
});
