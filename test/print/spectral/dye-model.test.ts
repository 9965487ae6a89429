import assert from 'node:assert/strict';
import { lightness, luminance } from '../../../src/colour/lab';
import { spectralView } from '../../../src/colour/spectra';
import { greyAim } from '../../../src/print/aim';
import { papers } from '../../../src/print/papers';
import type { DyeProcess } from '../../../src/print/process';
import { processOf } from '../../../src/print/processes';
import { dyeModel } from '../../../src/print/spectral/dye-model';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { measuredScale } from '../../../src/print/spectral/measured-scale';
import { neutralTarget, STRAY } from '../../../src/print/spectral/neutral-target';
import { GRID } from '../../../src/print/spectral/sampling';
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

  // the scale was measured with stray light: the same dyes print darker without it
  const printed = (L: number) => lightness((luminance(L) - 100 * STRAY) / (1 - STRAY));
  for (const light of ['A', 'FL2', 'FL11', 'LED-B1'] as const)
    it(`changes under ${light} half way between the scale that was really measured and dyes in the same stray light`, () => {
      const [day, lamp] = [made('silver-halide', 'D50'), made('silver-halide', light)];
      const [before, after] = [new Float64Array(3), new Float64Array(3)];
      // two papers, each of which moves by itself: a grey keeps its paper's share, as in the grey aim
      const { share } = greyAim([93.5, 0, 0], 6);
      const { paper } = neutralTarget();
      const [theirs, theirsLit] = (['D50', light] as const).map(id =>
        spectralView(id, GRID).lab(paper, new Float64Array(3)),
      );
      const scale = measuredScale(dyeSet('chromogenic').mean, light).filter(
        ({ lab }) => lab[0] > 36 && lab[0] < 80,
      );
      assert.ok(scale.length > 10);
      for (const { lab, measured, modelled } of scale) {
        const L = printed(lab[0]);
        const value = valueFor(day, L);
        day.lab([value, value, value], null, before);
        lamp.lab([value, value, value], null, after);
        for (const i of [1, 2]) {
          const change = after[i] - before[i] - share(L) * (lamp.white[i] - day.white[i]);
          const middle = (measured[i] + modelled[i]) / 2 - share(L) * (theirsLit[i] - theirs[i]);
          // the target is greener than its paper, so that its mixture of dyes is another one
          assert.ok(Math.abs(change - middle) < 1, `L* ${lab[0]}: ${change}, half way is ${middle}`);
        }
      }
    });

  it('changes the greys of 80, 80, 80 under FL11 by no more than half way to what was measured', () => {
    // measured where the target is as deep: a* +1.9; the dyes with its stray light: +4.6
    const [before, after] = [new Float64Array(3), new Float64Array(3)];
    made('silver-halide', 'D50').lab([80 / 255, 80 / 255, 80 / 255], null, before);
    made('silver-halide', 'FL11').lab([80 / 255, 80 / 255, 80 / 255], null, after);
    assert.ok(Math.abs(after[1] - before[1] - 3.25) < 0.4, `${after[1] - before[1]}`);
  });

  it('under other lights is less sure, borrowed dyes twice as unsure', () => {
    const own = made('silver-halide', 'FL11', 'photo-gloss').dataSpread(50, [0.5, 0.5, 0.5]);
    const borrowed = made('dye-transfer', 'FL11').dataSpread(50, [0.5, 0.5, 0.5]);
    assert.ok(own.a > 1 && borrowed.a > 1.8 * own.a);
  });
});
