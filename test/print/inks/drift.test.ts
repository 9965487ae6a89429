import assert from 'node:assert/strict';
import { driftedTone, inkDrifts } from '../../../src/print/inks/drift';
import { type BlackGeneration, inksOnAxis, neutralAxis } from '../../../src/print/inks/separation';
import { pressOf } from '../../../src/print/press';
import { normals } from '../press-sets';

describe('tone value drift', () => {
  it('moves the mid-tone by what is stated, the three-quarter tone by three quarters, paper and solid not at all', () => {
    // ISO 12647-2:2013's tolerances of 4 % at mid-tone and 3 % at three quarters (from memory)
    assert.ok(Math.abs(driftedTone(0.5, 4) - 0.54) < 1e-12);
    assert.ok(Math.abs(driftedTone(0.75, -4) - 0.72) < 1e-12);
    assert.equal(driftedTone(0, 4), 0);
    assert.equal(driftedTone(1, -4), 1);
  });
  it('never leaves 0 to 1', () => {
    assert.equal(driftedTone(0.1, -60), 0);
    assert.equal(driftedTone(0.9, 60), 1);
  });
  it('has six causes, tone values first; a house keeps its black ink', () => {
    const causes = inkDrifts({
      tone: { order: 1.9, page: 0.4 },
      blackShade: { a: 0.9, b: 1.5 },
      colouredGrey: { a: 0, b: 0 },
    });
    assert.deepEqual(
      causes.map(({ house, order, page }) => [house, order, page]),
      [...Array(4).fill([0, 1.9, 0.4]), [0.9, 0, 0], [1.5, 0, 0]],
    );
  });
});

describe('scatter of a grey by Monte Carlo, SD 2 % of tone value in every ink', () => {
  // Median and 95th percentile of dCh, computed by this project's collection of facts on FOGRA51 and FOGRA52 with
  // an even shift; here on TR 006 (coated) and on the published solids of FOGRA52 (uncoated). Within 15 % and the
  // rounding of those figures.
  const none: BlackGeneration = { id: 'light', label: '', weight: 1, black: () => 0 };
  const medium: BlackGeneration = { ...none, black: alone => 0.62 * alone ** 2 + 0.3 * alone ** 30 };
  const cases: ['coated' | 'uncoated', string, BlackGeneration, number, number, number][] = [
    ['coated', 'C, M, Y alone', none, 62, 1.8, 3.9],
    ['coated', 'C, M, Y alone', none, 46, 2.1, 4.4],
    ['coated', 'medium black', medium, 52, 1.55, 3.25],
    ['coated', 'medium black', medium, 34, 1.35, 2.8],
    ['uncoated', 'C, M, Y alone', none, 62, 1.5, 3.2],
    ['uncoated', 'medium black', medium, 52, 1.1, 2.3],
    ['uncoated', 'medium black', medium, 34, 0.6, 1.4],
  ];
  const presses = {
    coated: pressOf({ process: 'offset-coated', paper: 'gloss-coated', light: 'D50', inkLimit: null }),
    uncoated: pressOf({ process: 'offset-uncoated', paper: 'uncoated-bright', light: 'D50', inkLimit: null }),
  };
  for (const [stock, name, generation, L, median, p95] of cases)
    it(`${stock}, ${name}, L* ${L}: ${median} and ${p95}`, function () {
      const { daylight } = presses[stock];
      const inks = new Float64Array(4);
      inksOnAxis(neutralAxis(daylight, generation, 400), L, inks);
      const [p50, p95Here] = percentiles(inks, daylight.lab);
      this.test!.title += ` (here ${p50.toFixed(2)} and ${p95Here.toFixed(2)})`;
      const close = (value: number, stated: number) => Math.abs(value - stated) < 0.15 * stated + 0.05;
      assert.ok(close(p50, median) && close(p95Here, p95));
    });
  for (const [stock, K, most] of [
    ['coated', 0.47, 0.25],
    ['uncoated', 0.48, 0.5],
  ] as const)
    it(`${stock}, black alone: hardly anything (95th percentile within ${most})`, () => {
      const [, p95] = percentiles(Float64Array.of(0, 0, 0, K), presses[stock].daylight.lab);
      assert.ok(p95 < most, `${p95}`);
    });

  function percentiles(
    inks: Float64Array,
    lab: (device: ArrayLike<number>, drift: ArrayLike<number> | null, out: Float64Array) => void,
  ): [number, number] {
    const out = new Float64Array(3);
    lab(inks, null, out);
    const [, a, b] = out;
    const next = normals(11);
    const moves = Array.from({ length: 8000 }, () => {
      lab(inks, [2 * next(), 2 * next(), 2 * next(), 2 * next(), 0, 0], out);
      return Math.hypot(out[1] - a, out[2] - b);
    }).sort((x, y) => x - y);
    return [moves[4000], moves[7600]];
  }
});
