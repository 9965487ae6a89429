import assert from 'node:assert/strict';
import { factsOf } from '../../src/picture/facts';
import { readingOf } from '../../src/picture/meaning';
import type { Header, Samples } from '../../src/picture/types';

const header = (change: Partial<Header>): Header => ({
  format: 'tiff',
  width: 1,
  height: 1,
  channels: 1,
  bits: 8,
  sample: 'uint',
  alpha: false,
  palette: false,
  space: 'grey',
  inverted: false,
  spots: 0,
  page: 1,
  pages: 1,
  orientation: 1,
  ppi: null,
  icc: null,
  remarks: [],
  ...change,
});

/** Facts of one row of pixels. */
async function facts(samples: Omit<Samples, 'width' | 'height'>, change: Partial<Header> = {}) {
  const { channels, alpha, space } = samples;
  const width = samples.data.length / (channels + (alpha ? 1 : 0));
  const head = header({ width, channels, alpha, space, ...change });
  return factsOf({ ...samples, width, height: 1 }, head, await readingOf(head));
}

const grey = (...values: number[]) =>
  ({ channels: 1, alpha: false, space: 'grey', data: Uint8Array.from(values) }) as const;

describe('facts of a picture', () => {
  it('name levels in native units: one, four, twelve and sixteen bits', async () => {
    assert.deepEqual((await facts(grey(0, 255), { bits: 1 })).levels, [{ min: 0, max: 1, mean: 0.5 }]);
    assert.deepEqual((await facts(grey(17, 255), { bits: 4 })).levels, [{ min: 1, max: 15, mean: 8 }]);
    const deep = (...values: number[]) => ({ ...grey(), data: Uint16Array.from(values) });
    // as the decoder spreads them: round(i x 65535 / 4095)
    assert.deepEqual((await facts(deep(16, 65535), { bits: 12 })).levels[0].min, 1);
    assert.deepEqual((await facts(deep(7, 65535), { bits: 16 })).levels[0], {
      min: 7,
      max: 65535,
      mean: 32771,
    });
  });

  it('tell one bit from eight', async () => {
    assert.equal((await facts(grey(0, 255), { bits: 1 })).encoding, 'bilevel');
    assert.equal((await facts(grey(0, 255))).encoding, 'single-channel');
  });

  it('sum up inks in percent', async () => {
    const { ink, encoding, space } = await facts({
      channels: 4,
      alpha: false,
      space: 'cmyk',
      data: Uint8Array.from([255, 255, 0, 51, 0, 0, 0, 51]),
    });
    assert.deepEqual(ink, { maxTotal: 220, meanTotal: 120 });
    assert.deepEqual([encoding, space], ['colour', 'cmyk']);
  });

  it('leave coloured pixels out that cannot be seen, and say so', async () => {
    const found = await facts({
      channels: 3,
      alpha: true,
      space: 'rgb',
      data: Uint8Array.from([90, 90, 90, 255, 250, 10, 10, 0]),
    });
    assert.equal(found.encoding, 'rgb-neutral');
    assert.deepEqual(found.levels[0], { min: 90, max: 90, mean: 90 });
    assert.equal(found.remarks[0].code, 'transparent');
    assert.match(found.remarks[0].text, /50 % of the pixels are transparent and were left out/);
  });

  it('judge soft pixels as they lie on white paper, with levels as stored', async () => {
    const found = await facts({
      channels: 1,
      alpha: true,
      space: 'grey',
      data: Uint8Array.from([0, 128, 0, 255]),
    });
    assert.deepEqual(found.levels[0], { min: 0, max: 0, mean: 0 });
    assert.equal(found.tone!.darkest, 0);
    assert.ok(found.tone!.lightest > 53 && found.tone!.lightest < 54, `${found.tone!.lightest}`);
    assert.match(found.remarks[0].text, /laid on paper white/);
  });

  it('call all pixels 100 %', async () => {
    const found = await facts({
      channels: 1,
      alpha: true,
      space: 'grey',
      data: Uint8Array.from([0, 128, 90, 128]),
    });
    assert.match(found.remarks[0].text, /^100 % of the pixels are partly transparent/);
  });

  it('of a picture that is all transparent are empty, not broken', async () => {
    const found = await facts({
      channels: 3,
      alpha: true,
      space: 'rgb',
      data: Uint8Array.from([90, 200, 90, 0]),
    });
    assert.deepEqual([found.encoding, found.tone, found.zones], ['rgb-neutral', null, []]);
    assert.deepEqual(found.levels[0], { min: 0, max: 0, mean: 0 });
  });

  it('say where floats leave their range', async () => {
    const found = await facts({ ...grey(), data: Float32Array.of(0.5, 1.5) }, { bits: 32, sample: 'float' });
    assert.deepEqual(found.levels[0], { min: 0.5, max: 1.5, mean: 1 });
    assert.equal(found.remarks[0].code, 'float-range');
  });

  it('carry the remarks of header and profile, and what was assumed', async () => {
    const remark = { code: 'orientation', text: 'turned' } as const;
    const found = await facts(grey(1), { remarks: [remark], icc: Buffer.alloc(10) });
    assert.deepEqual(
      found.remarks.map(r => r.code),
      ['orientation', 'bad-profile'],
    );
    assert.match(found.assumed!, /No profile/);
    assert.equal(found.unreadable, null);
  });

  it('have zones whose weights sum up to one', async () => {
    const { zones } = await facts(grey(...Array.from({ length: 256 }, (_, i) => i)));
    assert.equal(zones.length, 16);
    assert.ok(Math.abs(zones.reduce((sum, zone) => sum + zone.weight, 0) - 1) < 1e-5);
    for (const { clusters } of zones) assert.equal(clusters.length, 1);
  });
});
