import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture } from '../../src/print';
import { closedBelow } from '../../src/print/closed';
import type { Forecast } from '../../src/shared/forecast';
import { greyFacts } from '../book/support/facts';

const printing = (points: [L: number, Lprint: number][], black: number) =>
  closedBelow({
    zones: points.map(([L, Lprint]) => ({ L, Lprint })),
    range: { black },
  } as unknown as Forecast);

describe('the shadow that can be printed', () => {
  it('begins where the print is 3 lighter than its black', () => {
    // 10 + 0.8 L reaches 15 + 3 at L* 10
    const line: [number, number][] = [
      [20, 26],
      [70, 66],
    ];
    assert.equal(printing(line, 15), 10);
    assert.equal(printing(line.toReversed(), 15), 10);
  });

  it('is all of the file where nothing prints like black', () => {
    const light: [number, number][] = [
      [10, 40],
      [90, 92],
    ];
    assert.equal(printing(light, 5), 0);
  });

  it('cuts off the share that the forecast counts, on every process', () => {
    const facts = greyFacts('0'.repeat(64));
    for (const process of ['silver-halide', 'offset-uncoated', 'inkjet'] as const) {
      const forecast = forecastPicture(facts, defaultTarget(process))!;
      const below = closedBelow(forecast);
      const share = facts.tone!.histogram.reduce((sum, part, L) => (L < below ? sum + part : sum), 0);
      if (forecast.routes) continue;
      assert.ok(Math.abs(share - forecast.range.blockedShare) < 1e-6, `${process} ${below} ${share}`);
    }
  });
});
