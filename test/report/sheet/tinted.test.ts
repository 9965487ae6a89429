import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../../src/print';
import { tintedOf } from '../../../src/report/sheet/tinted';
import { greyScale } from '../../print/facts';

/** An order that prints greys darker than `to` with a tint of `b`, the others without. */
const order =
  (b: number, to = 101) =>
  (L: number) => ({ L, a: 0, b: L < to ? b : 0 });

describe('orders in which a tint is seen', () => {
  const one = forecastValue({ space: 'grey', values: [0.5] }, defaultTarget('offset-coated'));
  const scale = forecastPicture(greyScale(), defaultTarget('offset-coated'))!;

  it('are those whose tint is seen by itself (dCh 2)', () => {
    assert.deepEqual(tintedOf(one, [order(1.9), order(2.1), order(-4)]), [false, true, true]);
  });

  it('are those in which a quarter of the picture is tinted, each by itself', () => {
    assert.deepEqual(tintedOf(scale, [order(3, 25), order(0), order(3, 75)]), [false, false, true]);
    assert.deepEqual(tintedOf(scale, [order(3, 75), order(3, 75), order(3, 75)]), [true, true, true]);
  });

  it('are not made by a tint in deep shadows alone, which the eye hardly sees', () => {
    const tones = scale.zones.map(({ L }) => L).sort((x, y) => x - y);
    const onlyIn = (some: number[]) => (L: number) => ({ L, a: 0, b: some.includes(L) ? 6 : 0 });
    const [dark, light] = [tones.slice(0, 3), tones.slice(-3)];
    assert.deepEqual(tintedOf(scale, [onlyIn(dark), onlyIn(light)]), [false, true]);
  });
});
