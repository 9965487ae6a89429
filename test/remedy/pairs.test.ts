import assert from 'node:assert/strict';
import { Pairs } from '../../src/remedy/pairs';

/** Bytes that differ from place to place, at an address that many can be taken from at a time or not. */
const bytes = (length: number, factor: number, start: number) => {
  const out = new Uint8Array(start + length).subarray(start);
  for (let i = 0; i < length; i++) out[i] = (i * factor + (i >> 3)) & 255;
  return out;
};

describe('pairs of bytes', () => {
  for (const start of [0, 1, 4])
    it(`are all counted, from address ${start} on`, () => {
      for (const length of [0, 3, 4, 1003]) {
        const [one, other] = [bytes(length, 7, 0), bytes(length, 211, start)];
        const expected = new Uint32Array(65536);
        for (let i = 0; i < length; i++) expected[one[i] * 256 + other[i]]++;
        const pairs = new Pairs();
        pairs.add(one, other);
        assert.deepEqual(pairs.counts(), expected, `${length}`);
        pairs.add(one, other);
        assert.deepEqual(
          pairs.counts(),
          expected.map(count => count * 2),
          `${length}, twice`,
        );
      }
    });
});
