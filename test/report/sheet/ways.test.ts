import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../../src/print';
import { waysOf } from '../../../src/report/sheet/ways';
import { inkScale } from '../../print/facts';

describe('the ways of a print house', () => {
  const grey = forecastValue({ space: 'grey', values: [0.5] }, defaultTarget('offset-coated'));
  it('are told one by one, with weight, tint, odds and black of each', () => {
    const ways = waysOf(grey, true);
    assert.deepEqual(
      ways.map(({ weight }) => weight),
      grey.routes!.map(({ weight }) => `${Math.round(100 * weight)} %`),
    );
    assert.ok(ways.some(({ weight, label }) => weight === '60 %' && /black plate/.test(label)));
    for (const { prints } of ways)
      assert.match(prints, /^L\* \d+, tint [+−]?\d.* \/ .*, seen in .* orders? .*, black L\* \d+$/);
    assert.equal(new Set(ways.map(({ prints }) => prints.replace(/.*black/, ''))).size > 1, true);
  });
  it('give no L* of a picture, and no odds of line work', () => {
    const black = inkScale(v => [0, 0, 0, v], 'black-only');
    const picture = forecastPicture(black, defaultTarget('offset-coated'))!;
    for (const { prints } of waysOf(picture, false)) assert.match(prints, /^tint /);
    const ends = { ...picture, zones: picture.zones.slice(0, 2).map((zone, i) => ({ ...zone, L: 100 * i })) };
    for (const { prints } of waysOf(ends, false)) assert.match(prints, /^black L\* \d+$/);
  });
  it('are none where there is one', () => {
    const known = { ...defaultTarget('offset-coated'), route: 'black-plate' as const };
    assert.deepEqual(waysOf(forecastValue({ space: 'grey', values: [0.5] }, known), true), []);
  });
});
