import assert from 'node:assert/strict';
import { defaultTarget, processes } from '../../../src/print';
import { LOST, OWN } from '../../../src/print/range';
import { curveAt } from '../../../src/remedy/tone/curve';
import { fitCurve } from '../../../src/remedy/tone/fit';
import { shownCurve } from '../../../src/remedy/tone/shown';
import type { PressProfile, Target } from '../../../src/shared/target';

const FULL = { shadows: 1, lighten: 0 };

/** A histogram of tones of equal area from one L* to another. */
const tonesFrom = (from: number, to = 100) =>
  Array.from({ length: 101 }, (_, L) => (L >= from && L <= to ? 1 / (to - from + 1) : 0));

/** A house's profile of R, G, B that prints everything too dark: an exponent more. */
const dark: PressProfile = {
  id: 'dark',
  description: 'dark',
  space: 'rgb',
  greys: null,
  lab(values, out) {
    out[0] = 6 + 88 * values[1] ** 1.6;
    out[1] = out[2] = 0;
  },
  toJSON: () => 'dark',
};

describe('a curve that fits tones to a printable range', () => {
  for (const { id } of processes)
    for (const to of ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned'] as const)
      it(`for ${id} as ${to} rises smoothly, keeps white and lights, and loses no tone above the file's black`, () => {
        const { curve, tones } = fitCurve(defaultTarget(id), to, FULL, null);
        if (!curve) {
          assert.ok(tones.printed[OWN + 1] > tones.black + LOST, 'a curve was needed');
          return;
        }
        assert.equal(curve.length, 101);
        assert.equal(curve[100], 100);
        const slopes = curve.slice(1).map((L, i) => L - curve[i]);
        assert.ok(Math.min(...slopes) > 0.4, `flattest ${Math.min(...slopes)}`);
        // no corner: from one step to the next the slope changes little, also where shadows are opened twofold
        slopes.slice(1).forEach((slope, i) => {
          assert.ok(Math.abs(slope - slopes[i]) < 0.3, `corner at L* ${i + 1}: ${slopes[i]}, ${slope}`);
        });
        for (let L = 70; L <= 100; L++)
          assert.ok(Math.abs(curve[L] - L) < 0.05, `L* ${L} became ${curve[L]}`);
        for (let L = OWN + 1; L <= 100; L++) {
          const printed = curveAt(tones.printed, curve[L]);
          assert.ok(printed > tones.black + LOST - 0.1, `L* ${L} prints at ${printed}`);
        }
        // shades lie further apart in print than they did, where they were lost
        const apart = (from: number, to: number) => curveAt(tones.printed, to) - curveAt(tones.printed, from);
        const lost = tones.printed.filter(L => L < tones.black + LOST).length;
        assert.ok(apart(curve[OWN], curve[OWN + 4]) > apart(OWN, OWN + 4) || lost <= OWN + 4);
      });

  it('does half of it at half the strength, and nothing at none', () => {
    const target = defaultTarget('offset-uncoated');
    const of = (shadows: number) => fitCurve(target, 'rgb-neutral', { shadows, lighten: 0 }, null).curve;
    const [half, full] = [of(0.5)!, of(1)!];
    for (let L = 5; L < 60; L += 5)
      assert.ok(half[L] > L + 0.2 && half[L] < full[L] - 0.2, `L* ${L}: ${half[L]}, ${full[L]}`);
    assert.equal(of(0), null);
  });

  it('leaves a picture alone whose tones can all be told from black', () => {
    const { curve, told } = fitCurve(defaultTarget('offset-uncoated'), 'rgb-neutral', FULL, tonesFrom(30));
    assert.equal(curve, null);
    assert.match(told.join(' '), /no curve is needed/);
  });

  it('lifts a picture of lighter shadows by less', () => {
    const target = defaultTarget('offset-uncoated');
    const all = fitCurve(target, 'rgb-neutral', FULL, tonesFrom(0)).curve!;
    const some = fitCurve(target, 'rgb-neutral', FULL, tonesFrom(6)).curve!;
    assert.ok(some[10] < all[10] - 1, `${some[10]}, ${all[10]}`);
  });

  it('says what it rests on, and counts the steps that it saves', () => {
    const generic = fitCurve(defaultTarget('dry-toner'), 'rgb-neutral', FULL, null).told.join(' ');
    assert.match(generic, /a guess about such processes, not your printer, the mean of 4 ways/);
    const data = fitCurve(defaultTarget('offset-uncoated'), 'rgb-neutral', FULL, null).told.join(' ');
    assert.match(data, /such a process in general, not your printer/);
    const [, before, after] = /(\d+) would print like black, and (\d+) do so with the curve/.exec(data)!;
    assert.ok(Number(before) >= 10 && Number(after) <= 2, data);
    assert.match(data, /Of the 101 whole steps of L\*, of which no picture need hold all, \d+ would/);
    const own = fitCurve(defaultTarget('offset-uncoated'), 'rgb-neutral', FULL, tonesFrom(0)).told.join(' ');
    assert.match(own, /Of the picture's steps of L\*, \d+ would/);
  });

  it('lightens for a process that prints dark, only where something shows that it does', () => {
    const target: Target = { ...defaultTarget('silver-halide'), pressProfile: dark };
    const wish = { shadows: 0, lighten: 1 };
    const { curve, tones, told } = fitCurve(target, 'rgb-neutral', wish, null);
    for (let L = 20; L < 95; L += 5) {
      assert.ok(curve![L] > L, `L* ${L} became ${curve![L]}`);
      assert.ok(Math.abs(curveAt(tones.printed, curve![L]) - tones.proportional[L]) < 0.6, `L* ${L}`);
    }
    assert.match(told.join(' '), /by the print house's profile.*too dark, which the curve answers/);
    const shownNone = fitCurve(defaultTarget('silver-halide'), 'rgb-neutral', wish, null);
    assert.equal(shownNone.curve, null);
    assert.match(shownNone.told.join(' '), /Nothing shows that it prints dark/);
  });

  it('is shown as a table of what the file holds, what it becomes, and how both print', () => {
    const { curve, tones } = fitCurve(defaultTarget('offset-uncoated'), 'rgb-neutral', FULL, null);
    const table = shownCurve(curve, tones);
    assert.deepEqual([table[0].from, table.at(-1)!.from, table.at(-1)!.to], [0, 100, 100]);
    const row = table.find(({ from }) => from === 10)!;
    assert.equal(row.to, Math.round(curve![10] * 10) / 10);
    assert.equal(row.printedAsIs, Math.round(tones.printed[10] * 10) / 10);
    assert.equal(row.printed, Math.round(curveAt(tones.printed, curve![10]) * 10) / 10);
    for (const { from, to } of shownCurve(null, tones)) assert.equal(from, to);
  });
});
