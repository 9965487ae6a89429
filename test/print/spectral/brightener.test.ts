import assert from 'node:assert/strict';
import { spectralView } from '../../../src/colour/spectra';
import { parseTable } from '../../../src/colour/table';
import factorsText from '../../../src/print/data/oba_radiance_factors.csv';
import { AMOUNT, brightenerExcess } from '../../../src/print/spectral/brightener';
import { GRID, spectraIn } from '../../../src/print/spectral/sampling';
import type { LightId } from '../../../src/shared/target';

const table = parseTable(factorsText);
const measured = (sample: string, condition: string) =>
  spectraIn(table)[
    table.labels('sample').findIndex((s, i) => s === sample && table.labels('condition')[i] === condition)
  ];
/** The strongly brightened white under a light: its reflectance and what it adds. */
function white(light: LightId): Float64Array {
  const daylight = brightenerExcess('D50');
  const excess = brightenerExcess(light);
  const total = measured('oba_white_A', 'M1').map((value, i) => value - daylight[i] + excess[i]);
  return spectralView(light, GRID).lab(total, new Float64Array(3));
}

describe('optical brightener', () => {
  // b* of the strongly brightened white, seen under the light itself by an adapted observer: this project's own
  // computation from published bispectral matrices; under D50 the instrument condition M1 of ISO 13655
  const EXPECTED: [LightId, number, number][] = [
    ['D50', -8.6, 0.3],
    ['D65', -12.2, 0.3],
    ['A', -7.2, 0.6],
    ['FL2', -3.2, 1],
    ['FL11', -1.3, 0.5],
    ['LED-B1', 2, 0.6],
    ['LED-B3', 2.4, 0.6],
    ['LED-B5', 2.4, 0.6],
  ];
  for (const [light, b, within] of EXPECTED)
    it(`a strongly brightened white is b* ${b} under ${light}`, () => {
      assert.ok(Math.abs(white(light)[2] - b) < within, `${white(light)}`);
    });

  it('without ultraviolet the same white is slightly yellow (M2 of ISO 13655: 94.2, -0.7, +2.2)', () => {
    const m2 = measured('oba_white_A', 'M2').map((value, i, all) => (i < 2 ? all[2] : value));
    const lab = spectralView('D50', GRID).lab(m2, new Float64Array(3));
    [94.2, -0.7, 2.2].forEach((value, i) => {
      assert.ok(Math.abs(lab[i] - value) < 0.15, `${lab}`);
    });
  });

  it('shines about 440 nm, and nowhere adds where it only reflects', () => {
    const excess = brightenerExcess('D50');
    assert.ok(Math.abs(400 + 10 * excess.indexOf(Math.max(...excess)) - 435) <= 10);
    assert.ok(Math.max(...excess.slice(20)) < 0.01);
  });

  it('the classes are those of ISO 15397: the difference of D65 brightness with and without ultraviolet', () => {
    // brightness weighs about 457 nm, half width 44 nm (ISO 2470-2); classes 0-4, 4-8, 8-14, above (partly from memory)
    const excess = brightenerExcess('D65');
    let [sum, weights] = [0, 0];
    for (let i = 0; i < GRID.count; i++) {
      const weight = Math.exp(-0.5 * ((400 + 10 * i - 457) / 18.7) ** 2);
      sum += 100 * weight * excess[i];
      weights += weight;
    }
    const brightness = (name: keyof typeof AMOUNT) => (AMOUNT[name] * sum) / weights;
    assert.equal(brightness('none'), 0);
    assert.ok(brightness('faint') > 0 && brightness('faint') < 4);
    assert.ok(brightness('low') > 4 && brightness('low') < 8);
    assert.ok(brightness('moderate') > 8 && brightness('moderate') < 14);
    assert.ok(brightness('high') > 14);
  });
});
