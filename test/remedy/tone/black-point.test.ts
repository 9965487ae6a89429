import assert from 'node:assert/strict';
import { luminance } from '../../../src/colour/lab';
import { blackPointScaled } from '../../../src/remedy/tone/black-point';

describe('black point compensation', () => {
  it('moves black to black, keeps white, and is a straight line in luminance between', () => {
    const scaled = blackPointScaled(16, 0);
    assert.ok(Math.abs(scaled(16)) < 1e-9 && Math.abs(scaled(100) - 100) < 1e-9);
    // half way in luminance stays half way
    const [Y0, Y50, Y100] = [16, 50, 100].map(L => luminance(L));
    assert.ok(Math.abs(luminance(scaled(50)) / 100 - (Y50 - Y0) / (Y100 - Y0)) < 1e-9);
  });
  it('comes back the other way', () => {
    const [there, back] = [blackPointScaled(0, 16), blackPointScaled(16, 0)];
    for (const L of [0, 3, 40, 99]) assert.ok(Math.abs(back(there(L)) - L) < 1e-9);
  });
  it('takes what is darker than black as black', () =>
    assert.ok(Math.abs(blackPointScaled(16, 2)(5) - 2) < 1e-9));
});
