import assert from 'node:assert/strict';
import type { Tints } from '../../../src/print/apart';
import { againstTheAlike } from '../../../src/rules/odd-one-out/sets';
import { picture, target } from '../support/pictures';

const still = { a: 0.1, b: 0.1 };
const spread: Tints['spread'] = { house: still, order: still, page: still };
const lightnesses = [10, 30, 50, 70, 90];
const any = picture('rgb-toned');
const print = (a: number, b: number, Ls = lightnesses) => ({
  picture: any,
  target: target('silver-halide'),
  tints: { zones: Ls.map(L => ({ L, a, b, weight: 1 / Ls.length })), spread },
});
const times = (n: number, a: number, b: number) => Array.from({ length: n }, () => print(a, b));
const sizes = (prints: ReturnType<typeof print>[]) => {
  const { alike, odd } = againstTheAlike(prints, { limit: 2, chance: 0.5 });
  return [alike.length, odd.length];
};

describe('sets of prints that are alike', () => {
  it('are those that match the middle of all, where most do', () =>
    assert.deepEqual(sizes([...times(5, 2, 8), ...times(2, 0, 0)]), [5, 2]));
  it('are the largest set where nobody has the middle of all', () => {
    assert.deepEqual(sizes([...times(4, 2, 8), ...times(2, 0, -4), ...times(2, 0, 0)]), [4, 4]);
    assert.deepEqual(sizes([...times(3, 0, 0), ...times(3, 0, -4), ...times(2, 2, 8)]), [3, 5]);
  });
  it('are found in a large set whose first ones are all different', () => {
    const strays = Array.from({ length: 30 }, (_, i) => print(0, -10 * (i + 1)));
    assert.deepEqual(sizes([...strays, ...times(20, 2, 8)]), [20, 30]);
  });
  it('are one where no two match, and all where everything does', () => {
    assert.deepEqual(sizes([print(0, 8), print(0, -8), print(8, 0)]), [1, 2]);
    assert.deepEqual(sizes(times(4, 2, 8)), [4, 0]);
  });
  it('leave out what holds none of their lightnesses', () =>
    assert.deepEqual(sizes([...times(3, 2, 8), print(0, 0, [99])]), [3, 0]));
});
