import assert from 'node:assert/strict';
import { screenColour } from '../../../src/report/sheet/colour';

describe('colour on a screen', () => {
  it('is neutral for a neutral Lab', () => {
    for (let L = 0; L <= 100; L += 10) {
      const [r, g, b] = screenColour(L, 0, 0).slice(1).match(/../g)!;
      assert.ok(r === g && g === b, screenColour(L, 0, 0));
    }
  });

  it('meets sRGB’s primaries as Lab under D50', () => {
    // Lab D50 of sRGB's red and blue by its published matrix adapted with Bradford (IEC 61966-2-1, ICC sRGB profile)
    assert.equal(screenColour(54.29, 80.81, 69.89), '#ff0000');
    assert.equal(screenColour(29.57, 68.3, -112.03), '#0000ff');
  });

  it('cuts what a screen cannot show', () => {
    assert.match(screenColour(50, -120, 0), /^#00[0-9a-f]{4}$/);
  });
});
