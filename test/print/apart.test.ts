import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, processes } from '../../src/print';
import { apart, middleOf, SEEN_APART, type Tints, tintAt, tintsOf } from '../../src/print/apart';
import type { Target } from '../../src/shared/target';
import { greyScale, inkScale } from './facts';

const LIMIT = SEEN_APART;
const near = (value: number, wanted: number) => assert.ok(Math.abs(value - wanted) < 1e-9, `${value}`);
const none = { a: 0, b: 0 };
const flat = (
  a: number,
  b: number,
  spread: Tints['spread'] = { house: none, order: none, page: none },
): Tints => ({
  zones: [20, 50, 80].map(L => ({ L, weight: 1 / 3, a, b })),
  spread,
});
const offset: Target = { ...defaultTarget('offset-coated'), route: 'inks' };
const tints = (facts: Parameters<typeof forecastPicture>[0], target = offset) =>
  tintsOf(forecastPicture(facts, target)!);

describe('two pictures side by side', () => {
  it('of one encoding differ by nothing that their files cause, however dark or light they are, on every process', () => {
    for (const { id } of processes) {
      const target = defaultTarget(id);
      const told = apart(tints(greyScale(16), target), tints(greyScale(9), target), LIMIT)!;
      assert.ok(told.size < 0.3, `${id}: ${told.size}`);
      assert.ok(Math.abs(told.probability - told.byPrinter) < 0.02, id);
    }
  });

  it('differ by their tints at the same lightness, one minus the other', () => {
    const told = apart(flat(3, -1), flat(0, 1), LIMIT)!;
    near(told.difference.a, 3);
    near(told.difference.b, -2);
    near(told.probability, 1);
    near(told.byPrinter, 0);
    assert.ok(Math.abs(told.size - Math.hypot(3, 2)) < 1e-12);
    assert.equal(apart(flat(1, 0), flat(0, 0), LIMIT)!.probability, 0);
  });

  it('do not hide a difference that turns round between shadows and lights', () => {
    const turning: Tints = {
      ...flat(0, 0),
      zones: [20, 50, 80].map((L, i) => ({ L, weight: 1 / 3, a: 4 * (i - 1), b: 0 })),
    };
    const told = apart(turning, flat(0, 0), LIMIT)!;
    assert.ok(Math.abs(told.difference.a) < 1e-12);
    assert.ok(Math.abs(told.probability - 2 / 3) < 1e-12, 'two of three lightnesses');
  });

  it('drift together where they follow the press alike, and apart where one does not', () => {
    const drifting = { house: none, order: { a: 2, b: 2 }, page: none };
    assert.equal(apart(flat(0, 0, drifting), flat(0, 0, drifting), LIMIT)!.probability, 0);
    // a circle of two sigma/sigma 2: exp(-1/2)
    const told = apart(flat(0, 0, drifting), flat(0, 0), LIMIT)!;
    assert.ok(Math.abs(told.probability - Math.exp(-0.5)) < 1e-3, String(told.probability));
    // the black ink of a house moves the pictures in black ink alone
    const ofBlack = { house: { a: 2, b: 2 }, order: none, page: none };
    assert.ok(Math.abs(apart(flat(0, 0, ofBlack), flat(0, 0), LIMIT)!.probability - Math.exp(-0.5)) < 1e-3);
    assert.equal(apart(flat(0, 0, ofBlack), flat(0, 0, ofBlack), LIMIT)!.probability, 0);
    const real = apart(
      tints(inkScale(v => [0, 0, 0, v], 'black-only')),
      tints(inkScale(v => [v, v, v, 0], 'three-ink')),
      LIMIT,
    )!;
    assert.ok(real.probability > 0.8, `equal inks are brown beside black ink: ${JSON.stringify(real)}`);
  });

  it('scatter from page to page even as equal files', () => {
    const page = { house: none, order: none, page: { a: 1, b: 1 } };
    const told = apart(flat(0, 0, page), flat(0, 0, page), LIMIT)!;
    // the difference of two pages: variance 2, so exp(-4 / (2 x 2))
    assert.ok(Math.abs(told.byPrinter - Math.exp(-1)) < 1e-3, String(told.byPrinter));
    near(told.probability, told.byPrinter);
  });

  it('cannot be told apart without a lightness in common', () => {
    const dark: Tints = { ...flat(0, 0), zones: [{ L: 10, weight: 1, a: 5, b: 5 }] };
    assert.equal(apart(dark, flat(0, 0), LIMIT), null);
  });
});

describe('the middle of a set', () => {
  it('is its median, so that odd ones do not move it', () => {
    const page = { house: none, order: { a: 1, b: 1 }, page: none };
    const middle = middleOf([flat(1, 0, page), flat(1.2, 0), flat(9, 9), flat(0.9, 0, page), flat(1, 0)])!;
    assert.deepEqual(tintAt(middle, 50), { a: 1, b: 0 });
    assert.deepEqual(middle.spread.order, none);
  });
  it('is nothing of nothing, and nowhere that most of the set is not', () => {
    assert.equal(middleOf([]), null);
    const high: Tints = { ...flat(0, 0), zones: [90, 96].map(L => ({ L, weight: 0.5, a: 0, b: 0 })) };
    const middle = middleOf([flat(0, 0), flat(0, 0), high])!;
    assert.equal(tintAt(middle, 92), null);
    assert.deepEqual(tintAt(middle, 52), { a: 0, b: 0 });
  });
});
