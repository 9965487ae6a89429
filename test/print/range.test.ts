import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture } from '../../src/print';
import { lostBelow } from '../../src/print/range';
import type { SampledPicture } from '../../src/print/samples';
import { greyScale, inkScale } from './facts';

const picture = (histogram: number[] | null): SampledPicture => ({
  space: 'grey',
  neutral: true,
  plainRgb: true,
  histogram,
  zones: [
    { L: 0, a: 0, b: 0, weight: 0.2, clusters: [] },
    { L: 50, a: 0, b: 0, weight: 0.3, clusters: [] },
    { L: 100, a: 0, b: 0, weight: 0.5, clusters: [] },
  ],
});

describe('what is lost in black', () => {
  it('are the steps that print within L* 3 of black (common practice)', () => {
    // straight from 20 to 95: L* 2 of the file prints as 23
    const histogram = Array(101).fill(0);
    for (const [L, share] of [
      [0, 0.1],
      [1, 0.1],
      [2, 0.2],
      [60, 0.6],
    ])
      histogram[L] = share;
    const { blockedShare, lostSteps } = lostBelow(picture(histogram), [20, 57.5, 95], 20.1);
    assert.ok(Math.abs(blockedShare - 0.4) < 1e-9);
    assert.equal(lostSteps, 3);
  });
  it('are whole zones of stated values', () =>
    assert.deepEqual(lostBelow(picture(null), [20, 57.5, 95], 18), {
      blockedShare: 0.2,
      closedShare: 0,
      lostSteps: 1,
    }));

  const lostOf = (shares: Record<number, number>, printed: number[], black: number) => {
    const histogram = Array.from({ length: 101 }, (_, L) => shares[L] ?? 0);
    const { blockedShare, closedShare } = lostBelow(picture(histogram), printed, black);
    return [blockedShare, closedShare].map(share => Number(share.toFixed(9)));
  };
  const even = [20, 57.5, 95];

  it('are shades but for the file’s own black and what no eye tells from it', () => {
    assert.deepEqual(lostOf({ 0: 0.3, 60: 0.7 }, even, 20), [0.3, 0]);
    assert.deepEqual(lostOf({ 0: 0.3, 1: 0.1, 60: 0.6 }, even, 20), [0.4, 0]);
    assert.deepEqual(lostOf({ 0: 0.3, 1: 0.1, 2: 0.2, 60: 0.4 }, even, 20), [0.6, 0.2]);
  });
  it('go by the darkest tone that the file has, which of solid ink is no L* 0', () => {
    // as a press prints black alone: the file's L* 17 on the black
    assert.deepEqual(lostOf({ 17: 0.3, 60: 0.7 }, [2, 48, 94], 17), [0.3, 0]);
    assert.deepEqual(lostOf({ 17: 0.1, 19: 0.3, 60: 0.6 }, [2, 48, 94], 17), [0.4, 0.3]);
  });
  it('take no speck for the file’s black', () => {
    assert.deepEqual(lostOf({ 0: 0.004, 2: 0.3, 60: 0.696 }, even, 20.1), [0.304, 0]);
    assert.deepEqual(lostOf({ 0: 0.006, 2: 0.3, 60: 0.694 }, even, 20.1), [0.306, 0.3]);
  });
});

describe('darkest black', () => {
  const coated = defaultTarget('offset-coated');
  const blackOf = (inks: (v: number) => number[], encoding: 'black-only' | 'three-ink' | 'four-channel') =>
    forecastPicture(inkScale(inks, encoding), { ...coated, route: 'inks' })!.range.black;
  it('is that of the inks in use', () => {
    // TR 006: black alone 14.95, C M Y 23.0; four inks within the ink limit in between 8 (all inks) and 13
    assert.ok(Math.abs(blackOf(v => [0, 0, 0, v], 'black-only') - 14.95) < 0.05);
    assert.ok(Math.abs(blackOf(v => [v, v, v, 0], 'three-ink') - 23) < 0.05);
    const four = blackOf(v => [0.7 * v, 0.6 * v, 0.6 * v, 0.9 * v], 'four-channel');
    assert.ok(four > 8 && four < 13, `${four}`);
  });
  it('is deeper on photographic paper than black ink alone makes it there', () => {
    const target = defaultTarget('silver-halide');
    assert.equal(Math.round(forecastPicture(greyScale(), target)!.range.black), 6);
    assert.ok(
      forecastPicture(
        inkScale(v => [0, 0, 0, v], 'black-only'),
        target,
      )!.range.black > 12,
    );
  });
});
