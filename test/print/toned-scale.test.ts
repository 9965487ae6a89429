import assert from 'node:assert/strict';
import { defaultTarget } from '../../src/print';
import { forecastToned } from '../../src/print/toned-scale';

describe('a toned scale in print', () => {
  it('has the tint of the file beyond that of a neutral one, about as large', () => {
    const target = defaultTarget('silver-halide');
    const plain = forecastToned(0, 0, target).tint;
    const toned = forecastToned(3, 6, target).tint;
    const moved = [toned.a - plain.a, toned.b - plain.b];
    assert.ok(Math.hypot(moved[0] - 3, moved[1] - 6) < 1.5, `moved by ${moved}`);
  });
});
