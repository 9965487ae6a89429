import assert from 'node:assert/strict';
import { curveAt } from '../../../src/remedy/tone/curve';

describe('a lightness curve', () => {
  const curve = Array.from({ length: 101 }, (_, L) => L ** 2 / 100);
  it('is read between its steps', () => assert.ok(Math.abs(curveAt(curve, 50.5) - (25 + 26.01) / 2) < 1e-9));
  it('has its ends, and holds them', () =>
    assert.deepEqual(
      [-3, 0, 100, 130].map(L => curveAt(curve, L)),
      [0, 0, 100, 100],
    ));
});
