import assert from 'node:assert/strict';
import { relativeLabOfInks } from '../../../src/print/inks/file-colour';
import { shippedLab } from '../press-sets';

describe('what a conversion program sees in inks without a profile', () => {
  it('is white where there is no ink and black where there is all', () => {
    assert.ok(relativeLabOfInks([0, 0, 0, 0]).every((v, i) => Math.abs(v - [100, 0, 0][i]) < 1e-9));
    assert.ok(relativeLabOfInks([1, 1, 1, 1])[0] < 0.5);
  });
  it('is neutral for black alone, and reddish for equal inks, as TR 006 is', () => {
    const [, a, b] = relativeLabOfInks([0, 0, 0, 0.5]);
    assert.ok(Math.hypot(a, b) < 1.2);
    const equal = relativeLabOfInks([0.5, 0.5, 0.5, 0]);
    const printed = shippedLab('TR006', 50, 50, 50, 0);
    assert.ok(Math.abs(equal[1] - printed[1]) < 1 && equal[2] > 4);
  });
});
