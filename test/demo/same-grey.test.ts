import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { master } from '../../src/demo/masters';
import { demoPictures } from '../../src/demo/pictures';
import { asLightAs, lifted, lightnessOf } from '../../src/demo/same-grey';
import { readFacts } from '../../src/picture/read';
import type { PictureFacts } from '../../src/shared/picture';

const near = (found: number, wanted: number, within: number, what: string) =>
  assert.ok(Math.abs(found - wanted) <= within, `${what}: ${found}, not ${wanted}`);

/** Lightness below which a share of the area lies. */
function quantile({ tone }: PictureFacts, share: number): number {
  let sum = 0;
  return tone!.histogram.findIndex(n => (sum += n) >= share);
}

describe('the same grey in every encoding', () => {
  it('is of the same lightness all through, as the files are read', async () => {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-same-grey-'));
    const drawn = master('head', 360);
    const found: [string, PictureFacts][] = [];
    for (const { file, store } of demoPictures.filter(p => p.file.startsWith('encodings/'))) {
      const stored = store(drawn);
      const target = path.join(folder, path.basename(file));
      fs.writeFileSync(target, Buffer.isBuffer(stored) ? stored : await stored.toBuffer());
      found.push([file, (await readFacts({ file: target }))[0]]);
    }
    fs.rmSync(folder, { recursive: true });
    assert.equal(new Set(found.map(([, facts]) => facts.encoding)).size, 6);
    const [, first] = found[0];
    for (const [file, facts] of found) {
      // the outermost pixels are the codec's
      for (const share of [0.001, 0.02, 0.1, 0.25, 0.5, 0.75, 0.9, 0.98, 0.999])
        near(quantile(facts, share), quantile(first, share), 1, `${file}, ${share}`);
    }
  });

  it('is darker by no more than equal inks reach, and in proportion', () => {
    const tones = Float32Array.of(0, 0.2, 0.5, 1);
    const { tones: after } = lifted({ width: 4, height: 1, tones });
    for (const [i, tone] of tones.entries())
      near(lightnessOf(after[i]), 25 + 0.75 * lightnessOf(tone), 1e-3, `${tone}`);
  });

  it('takes the whole mix where that is too light', () => {
    const inks = asLightAs(depth => [0, 0, 0, 50 * depth]);
    assert.deepEqual(inks(1), [0, 0, 0, 50]);
    assert.deepEqual(inks(0), [0, 0, 0, 0]);
  });

  it('is looked up where any decoder finds it: a grey of an sRGB file has that L*', async () => {
    const pixel = {
      create: { width: 1, height: 1, channels: 3 as const, background: { r: 119, g: 119, b: 119 } },
    };
    const data = await sharp(pixel).toColourspace('lab').raw({ depth: 'float' }).toBuffer();
    near(lightnessOf(119 / 255), data.readFloatLE(0), 0.1, 'L*');
  });
});
