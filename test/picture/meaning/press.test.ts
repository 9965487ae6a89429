import assert from 'node:assert/strict';
import { D50, lightness, xyzToLab } from '../../../src/colour/lab';
import { measuredPress, pressDataText } from '../../../src/colour/press';
import { patchesOf } from '../../../src/colour/press/patches';
import { blackLightness, pressMeaning } from '../../../src/picture/meaning/press';
import { random } from '../pass/random';

/** The interpolated data themselves, relative to paper. */
function direct(inks: number[]): Float64Array {
  const table = measuredPress('TR006');
  const paper = new Float64Array(3);
  const xyz = new Float64Array(3);
  table.xyz([0, 0, 0, 0], paper);
  table.xyz(
    inks.map(v => v / 255),
    xyz,
  );
  for (let c = 0; c < 3; c++) xyz[c] *= D50[c] / paper[c];
  return xyzToLab(xyz, xyz);
}

function tabled(inks: number[]): Float32Array {
  const lab = new Float32Array(3);
  pressMeaning().lab(Float32Array.from(inks), 1, lab);
  return lab;
}

const apart = (x: ArrayLike<number>, y: ArrayLike<number>) =>
  Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);

describe('inks without a profile', () => {
  it('are read as TR 006: on average within 0.2 dE76 of the interpolated data, within 0.8 anywhere', () => {
    const next = random(3);
    const errors = Array.from({ length: 2000 }, () => {
      const inks = Array.from({ length: 4 }, () => next() * 255);
      return apart(tabled(inks), direct(inks));
    });
    const mean = errors.reduce((a, b) => a + b) / errors.length;
    assert.ok(mean < 0.2, `mean ${mean}`);
    assert.ok(Math.max(...errors) < 0.8, `most ${Math.max(...errors)}`);
  });
  it('are read as well where greys lie', () => {
    for (let k = 0; k <= 255; k += 5)
      for (const inks of [
        [0, 0, 0, k],
        [k, k, k, 0],
        [k, 0.8 * k, 0.8 * k, 0],
        [0.6 * k, 0.5 * k, 0.5 * k, k],
      ])
        assert.ok(apart(tabled(inks), direct(inks)) < 0.8, `${inks}: ${tabled(inks)}, not ${direct(inks)}`);
  });
  it('have paper as their white', () => assert.ok(apart(tabled([0, 0, 0, 0]), [100, 0, 0]) < 1e-4));
});

describe('black ink alone', () => {
  it('is as light as the data have it: patches of the set, relative to its paper', () => {
    const text = pressDataText('TR006');
    const patches = patchesOf(text);
    const alone = patches.filter(({ inks: [c, m, y] }) => c + m + y === 0);
    const paper = alone.find(({ inks }) => inks[3] === 0)!.xyz[1];
    assert.ok(alone.length > 10);
    for (const { inks, xyz } of alone) {
      const wanted = lightness((100 * xyz[1]) / paper);
      const found = blackLightness(inks[3] / 100);
      assert.ok(Math.abs(found - wanted) < 0.15, `K ${inks[3]}: ${found}, measured ${wanted}`);
    }
  });
});
