import assert from 'node:assert/strict';
import { worstPair } from '../../../src/rules/odd-one-out/pairs';
import { picture } from '../support/pictures';

const print = (a: number, b: number, page = 0) => {
  const none = { a: 0, b: 0 };
  const zones = [20, 50, 80].map(L => ({ L, a, b, weight: 1 / 3 }));
  const spread = { house: none, order: none, page: { a: page, b: page } };
  return { picture: picture('rgb-toned'), target: null, tints: { zones, spread } };
};
const options = { limit: 2, chance: 0.5 };

describe('the worst pair', () => {
  it('is the two that are furthest apart', () => {
    const [warm, plain, cool] = [print(0, 2), print(0, 0), print(0, -2.5)];
    const worst = worstPair([warm, plain, cool], options)!;
    assert.deepEqual([worst.one, worst.other], [warm, cool]);
    assert.ok(Math.abs(worst.apart.size - 4.5) < 1e-6, `${worst.apart.size}`);
  });
  it('is none where no two are seen to differ, or equal files are seen to differ as well', () => {
    assert.equal(worstPair([print(0, 0.9), print(0, -0.9)], options), null);
    assert.equal(worstPair([print(0, 2, 4), print(0, -2, 4)], options), null);
    assert.equal(worstPair([print(0, 9)], options), null);
  });
});
