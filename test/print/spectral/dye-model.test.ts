import assert from 'node:assert/strict';
import { papers } from '../../../src/print/papers';
import type { DyeProcess } from '../../../src/print/process';
import { processOf } from '../../../src/print/processes';
import { dyeModel } from '../../../src/print/spectral/dye-model';
import { amountsFor, dyePrint } from '../../../src/print/spectral/dye-print';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { measuredDeparture } from '../../../src/print/spectral/measured-scale';
import { paperSpectrum } from '../../../src/print/spectral/paper-spectrum';
import type { LightId, ProcessId } from '../../../src/shared/target';

function made(id: ProcessId, light: LightId, paperId?: string) {
  const process = processOf(id);
  const paper = papers.find(p => p.id === (paperId ?? process.paper))!;
  return dyeModel({ process: process.model as DyeProcess, paper, light, ground: [] });
}

/** Value of R = G = B that prints about this lightness. */
function valueFor(model: ReturnType<typeof dyeModel>, L: number): number {
  const lab = new Float64Array(3);
  let [low, high] = [0, 1];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    model.lab([middle, middle, middle], null, lab);
    if (lab[0] < L) low = middle;
    else high = middle;
  }
  return low;
}

/** Distances in a*, b* that a drift of `sd` per layer makes, sorted. */
function scattered(model: ReturnType<typeof dyeModel>, L: number, sd: number): number[] {
  let random = 20231;
  const uniform = () => (random = (random * 48271) % 2147483647) / 2147483647;
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const value = valueFor(model, L);
  const [at, moved] = [new Float64Array(3), new Float64Array(3)];
  model.lab([value, value, value], null, at);
  return Array.from({ length: 4000 }, () => {
    model.lab([value, value, value], [sd * normal(), sd * normal(), sd * normal()], moved);
    return Math.hypot(moved[1] - at[1], moved[2] - at[2]);
  }).sort((one, other) => one - other);
}

describe('photographic printing', () => {
  const model = made('silver-halide', 'D50');

  // dCh by drift of 0.02 density per layer, this project's own Monte Carlo on published dye densities: median, and 95 %
  // at 2.15 times it
  for (const [L, median] of [
    [65, 2.1],
    [50, 1.65],
    [35, 1.2],
  ])
    it(`scatters at L* ${L} by ${median} (median) within 15 %`, () => {
      const distances = scattered(model, L, 0.02);
      assert.ok(Math.abs(distances[2000] / median - 1) < 0.15, `${distances[2000]}`);
      assert.ok(Math.abs(distances[3800] / distances[2000] / 2.15 - 1) < 0.15, `${distances[3800]}`);
    });

  it('a bare paper cannot drift', () => {
    const lab = new Float64Array(3);
    model.lab([1, 1, 1], [0.05, -0.05, 0.02], lab);
    [93.5, 0.5, -3].forEach((value, i) => {
      assert.ok(Math.abs(lab[i] - value) < 1e-3);
    });
  });

  it('the priors for a neutral, SD 1.7 in a* and 1.9 in b*, come out of the drift', () => {
    // this project's table of priors, derived from 0.02 density a layer
    const value = valueFor(model, 65);
    const [at, moved] = [new Float64Array(3), new Float64Array(3)];
    model.lab([value, value, value], null, at);
    let [aa, bb] = [0, 0];
    model.drifts.forEach(({ order, page }, i) => {
      const drift = [0, 0, 0];
      drift[i] = Math.hypot(order, page);
      model.lab([value, value, value], drift, moved);
      aa += (moved[1] - at[1]) ** 2;
      bb += (moved[2] - at[2]) ** 2;
    });
    assert.ok(Math.abs(Math.sqrt(aa) / 1.7 - 1) < 0.15, `${Math.sqrt(aa)}`);
    assert.ok(Math.abs(Math.sqrt(bb) / 1.9 - 1) < 0.15, `${Math.sqrt(bb)}`);
  });

  it('dye transfer is less sure: SD 2.2 and 2.5, for want of data', () => {
    const transfer = made('dye-transfer', 'D50');
    const { a, b } = transfer.dataSpread(65, [0.7, 0.7, 0.7]);
    assert.ok(Math.abs(Math.hypot(1.7, a) - 2.2) < 0.1, `${a}`);
    assert.ok(Math.abs(Math.hypot(1.9, b) - 2.5) < 0.1, `${b}`);
  });

  it('keeps its calibration under every light: only the view changes', () => {
    const lab = new Float64Array(3);
    for (const light of ['D65', 'A', 'FL11', 'LED-B3'] as const) {
      const other = made('silver-halide', light);
      other.lab([1, 1, 1], null, lab);
      other.white.forEach((value, i) => {
        assert.ok(Math.abs(lab[i] - value) < 1e-6);
      });
      other.lab([0.5, 0.5, 0.5], null, lab);
      assert.ok(Math.abs(lab[0] - 50) < 2);
    }
  });

  it('stands half way between the dyes and the scale that was really measured', () => {
    const [is, dyes] = [new Float64Array(3), new Float64Array(3)];
    const process = processOf('silver-halide').model as DyeProcess;
    const { mean } = dyeSet(process.dyes);
    const paper = paperSpectrum(papers.find(p => p.id === 'photo-lustre')!);
    const [daylight, lamp] = (['D50', 'FL11'] as const).map(light =>
      dyePrint({ dyes: mean, paper, flare: process.flare, light }),
    );
    made('silver-halide', 'D50').lab([0.5, 0.5, 0.5], null, is);
    lamp.lab(amountsFor(daylight, is, [0.6, 0.6, 0.6]), dyes);
    made('silver-halide', 'FL11').lab([0.5, 0.5, 0.5], null, is);
    const { a, b } = measuredDeparture(process.dyes, mean, 'FL11')(dyes[0]);
    assert.ok(a < -1, `${a}`);
    assert.ok(
      Math.abs(is[1] - dyes[1] - a / 2) < 0.01 && Math.abs(is[2] - dyes[2] - b / 2) < 0.01,
      `${is} ${dyes}`,
    );
  });

  it('under other lights is less sure, borrowed dyes twice as unsure', () => {
    const own = made('silver-halide', 'FL11', 'photo-gloss').dataSpread(50, []);
    const borrowed = made('dye-transfer', 'FL11').dataSpread(50, []);
    assert.ok(own.a > 1 && borrowed.a > 1.8 * own.a);
  });
});
