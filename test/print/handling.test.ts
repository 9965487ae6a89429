import assert from 'node:assert/strict';
import { handled, printLightness } from '../../src/print/handling';
import { blackGenerations } from '../../src/print/inks/separation';
import { pressOf } from '../../src/print/press';
import { sampledValue } from '../../src/print/values';

const press = pressOf({ process: 'offset-coated', paper: 'gloss-coated', light: 'D50', inkLimit: null });
const to = { white: 95, reference: press.reference, separation: press.separation };
const one = (handling: Parameters<typeof handled>[0], space: 'cmyk' | 'rgb' | 'grey', values: number[]) => {
  const picture = sampledValue({ space, values });
  return handled(handling, picture, picture.zones[0], to)[0];
};
const printed = (device: ArrayLike<number>) => {
  const lab = new Float64Array(3);
  press.daylight.lab(device, null, lab);
  return lab;
};

describe('print lightness', () => {
  it('runs from the press’s black to its paper', () => {
    assert.ok(Math.abs(printLightness(100, 95, 12) - 95) < 1e-9);
    assert.ok(Math.abs(printLightness(0, 95, 12) - 12) < 1e-9);
  });
  it('is linear in luminance (black-point compensation)', () => {
    // half the light of white: L* 76.07; between 1.4 % (L* 12) and 87.6 % (L* 95) it is 44.5 %, L* 72.56
    assert.ok(Math.abs(printLightness(76.07, 95, 12) - 72.56) < 0.05);
  });
});

describe('handling by the print house', () => {
  it('keeps inks as they are, and grey as black ink', () => {
    assert.deepEqual(one({ kind: 'kept' }, 'cmyk', [0.1, 0.2, 0.3, 0.4]).mean, [0.1, 0.2, 0.3, 0.4]);
    assert.deepEqual([...Array.from(one({ kind: 'grey-to-black' }, 'grey', [0.25]).mean)], [0, 0, 0, 0.75]);
  });
  it('turns a grey into black ink of the same lightness, as far as black reaches', () => {
    const { mean } = one({ kind: 'lightness-to-black' }, 'rgb', [0.5, 0.5, 0.5]);
    assert.ok(Math.abs(printed(mean)[0] - printLightness(53.39, 95, press.reference.black)) < 0.2);
  });
  it('separates a grey to the grey aim, and passes the file’s own tint on', () => {
    for (const generation of blackGenerations) {
      const { mean, passed } = one({ kind: 'separated', generation }, 'rgb', [0.5, 0.5, 0.5]);
      const [L, a, b] = printed(mean);
      assert.ok(Math.hypot(a - press.aim.a(L), b - press.aim.b(L)) < 0.4);
      assert.ok(Math.hypot(passed.a, passed.b) < 1e-6);
    }
    const toned = one({ kind: 'separated', generation: blackGenerations[0] }, 'rgb', [0.6, 0.5, 0.4]).passed;
    assert.ok(toned.a > 5 && toned.b > 15);
  });
  it('turns inks into R, G, B with the doubt of an unknown profile', () => {
    const black = one({ kind: 'to-rgb' }, 'cmyk', [0, 0, 0, 0.5]);
    assert.ok(Math.abs(black.mean[0] - black.mean[2]) < 0.02);
    assert.deepEqual(black.conversion, { a: 0.5, b: 0.8 });
    const equal = one({ kind: 'to-rgb' }, 'cmyk', [0.5, 0.5, 0.5, 0]);
    assert.ok(equal.mean[0] - equal.mean[2] > 0.03);
    assert.deepEqual(equal.conversion, { a: 1.1, b: 1.3 });
  });
});
