import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue, leanOf, processes } from '../../src/print';
import type { Forecast } from '../../src/shared/forecast';
import { greyScale } from './facts';

const inks = { ...defaultTarget('offset-coated'), route: 'inks' as const };
const printed = (values: number[]) => forecastValue({ space: 'cmyk', values }, inks);
/** Equal inks print reddish brown, much cyan prints bluish green: both far beyond the scatter. */
const brown = printed([0.5, 0.5, 0.5, 0]);
const neutral = printed([0, 0, 0, 0.5]);

describe('which way a set of pictures leans', () => {
  it('is for one stated value what its own forecast says, of one route and of several', () => {
    const rich = { space: 'cmyk' as const, values: [0.5, 0.5, 0.5, 0] };
    for (const { id } of processes)
      for (const route of ['unknown', defaultTarget(id).route] as const) {
        const forecast = forecastValue(rich, { ...defaultTarget(id), route });
        assert.equal(leanOf([forecast])?.direction ?? null, forecast.tint.direction, `${id} ${route}`);
      }
  });

  it('is named though one picture of many names none', () => {
    assert.equal(brown.tint.direction, 'warm');
    assert.equal(neutral.tint.direction, null);
    assert.equal(leanOf([brown, brown, brown, neutral])!.direction, 'warm');
  });

  it('is not named where most name none, or where they lean against each other', () => {
    assert.equal(leanOf([brown, neutral, neutral, neutral]), null);
    const against: Forecast = {
      ...brown,
      tint: { ...brown.tint, a: -brown.tint.a, b: -brown.tint.b },
    };
    assert.equal(leanOf([brown, brown, against, against]), null);
    assert.equal(leanOf([]), null);
  });

  it('is said by both names near their boundary, and then both are counted', () => {
    const towards = (hue: number, sd: number): Forecast => {
      const [a, b] = [Math.cos, Math.sin].map(of => 5 * of((hue * Math.PI) / 180));
      const none = { a: 0, b: 0 };
      const spread = { ...brown.spread, house: none, page: none, order: { a: sd, b: sd }, corr: 0 };
      return { ...brown, spread, tint: { ...brown.tint, a, b } };
    };
    // hue 19.2: half of the orders would be called warm
    const near = leanOf([towards(19.2, 1)])!;
    assert.deepEqual([near.direction, near.also], ['pinkish', 'warm']);
    assert.ok(near.probability > 0.99);
    assert.deepEqual(leanOf([towards(60, 1)])!.also, null);
    const beside = leanOf([towards(20.5, 1)])!;
    assert.deepEqual([beside.direction, beside.also], ['warm', 'pinkish']);
    // 12 degrees beyond the boundary, of a standard deviation of 11: an eighth is pinkish, which is not told or counted
    const far = leanOf([towards(32, 1)])!;
    assert.equal(far.also, null);
    assert.ok(far.probability > 0.8 && far.probability < 0.93, `${far.probability}`);
  });

  it('counts each picture the same, of however many routes it is mixed', () => {
    const mixed = forecastPicture(greyScale(), defaultTarget('offset-coated'))!;
    assert.ok(mixed.routes!.length > 1);
    assert.equal(leanOf([brown, brown, mixed])!.direction, 'warm');
    assert.equal(leanOf([brown, mixed, mixed]), null);
  });
});
