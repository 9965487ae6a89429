import assert from 'node:assert/strict';
import { wishKey } from '../../../src/remedy/plan/wish-key';
import type { RemedyWish } from '../../../src/shared/remedy';
import { wishFor } from '../support';

describe('key of a wish', () => {
  it('is the same for the same wish, whatever order it was put together in', () => {
    const turned = Object.fromEntries(Object.entries(wishFor()).reverse()) as unknown as RemedyWish;
    assert.equal(wishKey(turned), wishKey(wishFor()));
  });

  it('is another for every other wish', () => {
    const ramp = Array.from({ length: 101 }, (_, L) => L);
    const others: Partial<RemedyWish>[] = [
      {},
      { to: 'black-only' },
      { grey: { kind: 'luma' } },
      { grey: { kind: 'mix', red: 1, green: 0, blue: 0 } },
      { below: 3 },
      { tone: { kind: 'even' } },
      { curve: ramp },
      { curve: ramp.map(L => L / 2) },
      { blackPoint: 'kept' },
      { bits: 16 },
      { format: 'png' },
      { quality: 90 },
      { upright: true },
      { greyProfile: new Uint8Array([1]) },
      { greyProfile: new Uint8Array([2]) },
    ];
    assert.equal(new Set(others.map(change => wishKey(wishFor(change)))).size, others.length);
  });
});
