import assert from 'node:assert/strict';
import type { Draw } from '../../../src/report/sheet/draws';
import { sampleOf } from '../../../src/report/sheet/sample';

describe('sample of possible orders', () => {
  const warm = (draws: readonly Draw[]) => draws.filter(({ v }) => v > 1).length;

  it('counts what was expected, wherever one of the series’ samples does', () => {
    for (const expected of [1, 1.6, 2.4])
      for (let series = 0; series < 20; series++) {
        const off = Math.abs(warm(sampleOf(series, 10, expected, warm)) - expected);
        assert.ok(off <= 0.5, `${off} from ${expected} in series ${series}`);
      }
  });

  it('is the nearest where none does, and the same each time', () => {
    const counts = Array.from({ length: 64 }, (_, i) => 9 - (i % 3));
    let next = 0;
    const sample = sampleOf(1, 10, 2, () => counts[next++]);
    assert.deepEqual(
      sample,
      sampleOf(1, 10, 7, draws => (draws[0].u === sample[0].u ? 7 : 0)),
    );
    assert.equal(next, 64);
  });

  it('is another in another series', () => {
    assert.notDeepEqual(sampleOf(0, 10, 1, warm), sampleOf(1, 10, 1, warm));
  });
});
