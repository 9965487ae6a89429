import assert from 'node:assert/strict';
import type { TonePlane } from '../../src/remedy/grey/plane';
import { movedBetween } from '../../src/remedy/moved';
import { wishFor } from './support';

const LEVELS = [0, 10, 50, 100];
const plane = (index: number[], lightness = LEVELS): TonePlane => ({
  ...{ width: index.length, height: 1, index: Uint8Array.from(index) },
  ...{ lightness: Float32Array.from(lightness), alpha: null, tint: null, colour: null },
});

describe('how far lightness is moved on purpose', () => {
  it('is the most and the mean over every pixel, of levels that are used', () => {
    const own = plane([0, 0, 0, 1]);
    const planned = { ...own, lightness: Float32Array.from([4, 18, 0, 100]) };
    const wish = wishFor({ curve: LEVELS });
    assert.deepEqual(movedBetween(own, planned, wish, false), {
      ...{ maxMove: 8, meanMove: 5, method: null, fit: true, blackPoint: false },
    });
    assert.equal(movedBetween(own, planned, wishFor(), true)!.blackPoint, true);
    assert.equal(movedBetween(own, planned, wishFor(), true)!.fit, false);
  });

  it('is by the method where pixels are weighed otherwise, by its name or its weights', () => {
    const [own, planned] = [plane([0, 1, 2, 3]), plane([1, 1, 1, 3])];
    const by = (red: number, green: number, blue: number) =>
      movedBetween(own, planned, wishFor({ grey: { kind: 'mix', red, green, blue } }), false)!;
    assert.deepEqual(by(1, 0, 0), {
      ...{ maxMove: 40, meanMove: 12.5, method: '1,0,0', fit: false, blackPoint: false },
    });
    assert.equal(by(0.8, 0.3, -0.1).method, 'darker-sky');
    assert.equal(movedBetween(own, planned, wishFor({ grey: { kind: 'luma' } }), false)!.method, 'luma');
  });

  it('is nothing where only roundings differ', () => {
    const own = plane([0, 1, 2, 3]);
    const lightness = own.lightness.map(L => L + 0.001);
    assert.equal(movedBetween(own, { ...own, lightness }, wishFor(), false), null);
  });
});
