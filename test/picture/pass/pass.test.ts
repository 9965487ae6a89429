import assert from 'node:assert/strict';
import { tallyOf } from '../../../src/picture/pass/pass';
import { BLACK, type Tally, WHITE } from '../../../src/picture/pass/tally';
import type { Samples } from '../../../src/picture/types';
import { type Content, type Depth, type Opacity, picture } from './random';
import { count, fullOf } from './reference';

// Composites and narrowed samples are rounded to 8 bits before they are counted: half a step.
const ROUNDING = 0.51;

function agree(samples: Samples, tally: Tally) {
  const wanted = count(samples);
  const exact = samples.data instanceof Uint8Array && !samples.alpha;
  assert.equal(tally.pixels, wanted.pixels.length);
  tally.levels.forEach((level, c) => {
    assert.ok(Math.abs(level.min - wanted.levels[c].min) < 1e-6 * fullOf(samples.data), `least of ${c}`);
    assert.ok(Math.abs(level.max - wanted.levels[c].max) < 1e-6 * fullOf(samples.data), `most of ${c}`);
    assert.ok(Math.abs(level.mean - wanted.levels[c].mean) < 1e-6 * fullOf(samples.data), `mean of ${c}`);
  });
  if (samples.space === 'rgb')
    assert.ok(Math.abs(tally.spread - wanted.spread) <= (exact ? 0 : ROUNDING * 2) + 1e-9, 'spread');
  if (samples.space === 'cmyk')
    assert.ok(Math.abs(tally.inkTotal - wanted.inkTotal) <= (exact ? 0 : 4 * ROUNDING) + 1e-9, 'ink total');
  const { blocks, cells } = tally;
  assert.equal(
    cells.count.reduce((a, b) => a + b, 0),
    wanted.pixels.length,
    'every pixel in one cell',
  );
  assert.equal(
    blocks.count.reduce((a, b) => a + b, 0),
    wanted.pixels.length,
    'every pixel in one block',
  );
  for (const [block, means] of wanted.means)
    means.forEach((mean, c) => {
      const found = blocks.mean(block, c);
      assert.ok(Math.abs(found - mean) <= (exact ? 1e-4 : ROUNDING), `block ${block}: ${found}, not ${mean}`);
    });
  agreeCells(
    samples,
    tally,
    wanted.pixels.map(p => p.seen.map(v => v * 255)),
  );
}

function meansOf({ blocks }: Tally): Float32Array {
  const means = new Float32Array(blocks.count.length * blocks.channels);
  blocks.read(0, blocks.count.length, means);
  return means;
}

/** Means of the cells against those of the pixels: a coarse cell's middle is at most 1.5 steps from what is in it. */
function agreeCells(samples: Samples, { cells }: Tally, pixels: number[][]) {
  for (let c = 0; c < samples.channels; c++) {
    const mean = pixels.reduce((sum, p) => sum + p[c], 0) / Math.max(1, pixels.length);
    let found = 0;
    for (let i = 0; i < cells.length; i++) found += cells.count[i] * cells.values[i * samples.channels + c];
    assert.ok(
      Math.abs(found / Math.max(1, pixels.length) - mean) <= 1.5 + ROUNDING,
      `mean of cells, channel ${c}`,
    );
  }
}

describe('one pass over the pixels', () => {
  const sizes = [
    [1, 1],
    [7, 9],
    [16, 8],
    [37, 21],
    [8200, 2],
  ];
  const depths: Depth[] = [8, 16, 'float'];
  const contents: Content[] = ['noise', 'equal', 'near'];
  const opacities: Opacity[] = ['none', 'opaque', 'holes', 'soft'];
  let seed = 1;
  for (const space of ['grey', 'rgb', 'cmyk'] as const)
    for (const depth of depths)
      for (const opacity of opacities)
        it(`counts ${space}, ${depth}, alpha: ${opacity} as plain arithmetic does`, () => {
          for (const content of contents)
            for (const [width, height] of sizes) {
              const samples = picture(seed++, width, height, space, depth, content, opacity);
              agree(samples, tallyOf(samples));
            }
        });

  it('tells near-neutral values apart to the last step', () => {
    const samples = picture(99, 40, 40, 'rgb', 8, 'near', 'none');
    const { cells } = tallyOf(samples);
    const table = new Map<string, number>();
    for (let i = 0; i < samples.data.length; i += 3) {
      const key = samples.data.subarray(i, i + 3).join();
      table.set(key, (table.get(key) ?? 0) + 1);
    }
    assert.equal(cells.length, table.size);
    for (let i = 0; i < cells.length; i++)
      assert.equal(cells.count[i], table.get(cells.values.subarray(i * 3, i * 3 + 3).join()));
  });

  it('counts few ink mixes exactly and many of them coarsely, losing none', () => {
    const few = picture(5, 64, 64, 'cmyk', 8, 'noise', 'none');
    const exact = tallyOf(few).cells;
    const distinct = new Set<string>();
    for (let i = 0; i < few.data.length; i += 4) distinct.add(few.data.subarray(i, i + 4).join());
    assert.equal(exact.length, distinct.size);
    const many = tallyOf(picture(6, 640, 640, 'cmyk', 8, 'noise', 'none')).cells;
    assert.ok(many.length <= 32768 && many.length >= 4096, `${many.length} mixes`);
    assert.equal(
      many.count.reduce((a, b) => a + b, 0),
      640 * 640,
    );
  });

  it('finds the blocks that are plain white or plain black, within one step of 255', () => {
    const kindsOf = (space: 'grey' | 'rgb' | 'cmyk', ...blocks: number[][]) => {
      const channels = { grey: 1, rgb: 3, cmyk: 4 }[space] as 1 | 3 | 4;
      const width = blocks.length * 8;
      const data = Uint8Array.from(
        { length: width * 8 * channels },
        (_, i) => blocks[(Math.floor(i / channels) % width) >> 3][i % channels],
      );
      return [...tallyOf({ width, height: 8, channels, alpha: false, space, data }).blocks.kinds];
    };
    assert.deepEqual(kindsOf('grey', [255], [254], [253], [2], [1], [0]), [WHITE, WHITE, 0, 0, BLACK, BLACK]);
    assert.deepEqual(kindsOf('rgb', [255, 255, 254], [255, 255, 200], [0, 1, 0]), [WHITE, 0, BLACK]);
    const inks = [
      [0, 0, 1, 0],
      [9, 0, 0, 0],
      [0, 0, 0, 255],
      [255, 255, 255, 254],
      [255, 255, 255, 0],
    ];
    assert.deepEqual(kindsOf('cmyk', ...inks), [WHITE, 0, BLACK, BLACK, 0]);
  });

  it('finds no plain black where a picture of 16 bits still has shades, seen through or not', () => {
    const blocks = [0, 16, 40, 128, 257];
    const kindsOf = (channels: 1 | 3, alpha: boolean, isFloat: boolean) => {
      const step = channels + (alpha ? 1 : 0);
      const width = blocks.length * 8;
      const values = Array.from({ length: width * 8 * step }, (_, i) => {
        const at = Math.floor(i / step);
        // every other pixel is left out where there is alpha, and white
        const hidden = alpha && at % 2 === 1;
        if (i % step === channels) return hidden ? 0 : 65535;
        return hidden ? 65535 : blocks[(at % width) >> 3];
      });
      const data = isFloat ? Float32Array.from(values, v => v / 65535) : Uint16Array.from(values);
      const space = channels === 1 ? 'grey' : 'rgb';
      return [...tallyOf({ width, height: 8, channels, alpha, space, data }).blocks.kinds];
    };
    for (const channels of [1, 3] as const)
      for (const alpha of [false, true])
        for (const isFloat of [false, true])
          assert.deepEqual(kindsOf(channels, alpha, isFloat), [BLACK, BLACK, 0, 0, 0]);
  });

  it('starts each picture with empty tables', () => {
    const samples = picture(7, 50, 30, 'rgb', 8, 'noise', 'none');
    const first = tallyOf(samples);
    tallyOf(picture(8, 60, 60, 'cmyk', 8, 'noise', 'soft'));
    tallyOf(picture(9, 60, 60, 'rgb', 16, 'noise', 'soft'));
    const again = tallyOf(samples);
    assert.deepEqual(meansOf(again), meansOf(first));
    assert.deepEqual({ ...again, blocks: null }, { ...first, blocks: null });
  });

  it('clamps floats out of range for judging and tells their own extremes', () => {
    const data = Float32Array.of(-0.5, 0.25, 2, Number.NaN);
    const tally = tallyOf({ width: 4, height: 1, channels: 1, alpha: false, space: 'grey', data });
    assert.deepEqual([tally.levels[0].min, tally.levels[0].max], [-0.5, 2]);
    assert.deepEqual([...tally.cells.values], [0, 64, 255]);
  });
});
