import assert from 'node:assert/strict';
import type { Samples } from '../../../src/picture/types';
import { alphaOf, apart, singleOf } from '../../../src/remedy/grey/single';

const samples = (
  space: Samples['space'],
  channels: 1 | 3 | 4,
  alpha: boolean,
  data: Samples['data'],
): Samples => ({
  width: data.length / (channels + (alpha ? 1 : 0)),
  height: 1,
  channels,
  alpha,
  space,
  data,
});

/** The channel by itself; null where there is none. */
const singleChannel = (picture: Samples) => {
  const single = singleOf(picture);
  return single && apart(single);
};

describe('the one channel of a grey picture', () => {
  it('is the stored numbers themselves where there is nothing else', () => {
    const data = Uint16Array.of(1, 2, 3);
    assert.equal(singleChannel(samples('grey', 1, false, data)), data);
  });
  it('is taken out from beside alpha', () =>
    assert.deepEqual(
      singleChannel(samples('grey', 1, true, Uint8Array.of(5, 255, 6, 0))),
      Uint8Array.of(5, 6),
    ));
  it('is any of three equal ones', () =>
    assert.deepEqual(
      singleChannel(samples('rgb', 3, false, Uint8Array.of(5, 5, 5, 9, 9, 9))),
      Uint8Array.of(5, 9),
    ));
  it('is not there where one pixel differs in one channel', () => {
    for (const odd of [3, 4, 5]) {
      const data = Uint16Array.of(5, 5, 5, 9, 9, 9, 7, 7, 7);
      data[odd] = 10;
      assert.equal(singleChannel(samples('rgb', 3, false, data)), null, `sample ${odd}`);
    }
  });
  it('is looked for in every byte, wherever these lie', () => {
    const tones = Uint8Array.from({ length: 14 }, (_, i) => (i * 97) & 255);
    for (const start of [0, 1, 4]) {
      const data = new Uint8Array(start + tones.length * 3).subarray(start);
      for (let i = 0; i < data.length; i++) data[i] = tones[Math.floor(i / 3)];
      assert.deepEqual(singleChannel(samples('rgb', 3, false, data)), tones);
      for (let odd = 0; odd < data.length; odd++) {
        data[odd] ^= 128;
        assert.equal(singleChannel(samples('rgb', 3, false, data)), null, `from ${start}, sample ${odd}`);
        data[odd] ^= 128;
      }
    }
  });
  it('is black ink where no other ink is', () => {
    const data = Uint8Array.of(0, 0, 0, 4, 0, 0, 0, 8);
    assert.deepEqual(singleChannel(samples('cmyk', 4, false, data)), Uint8Array.of(4, 8));
    for (const ink of [4, 5, 6]) {
      const some = data.slice();
      some[ink] = 1;
      assert.equal(singleChannel(samples('cmyk', 4, false, some)), null, `ink ${ink}`);
    }
  });
  it('is not looked for in Lab and floats', () => {
    assert.equal(singleChannel(samples('lab', 3, false, Int16Array.of(1, 0, 0))), null);
    assert.equal(singleChannel(samples('grey', 1, false, Float32Array.of(0.5))), null);
  });
});

describe('alpha', () => {
  it('is none where all is opaque', () =>
    assert.equal(alphaOf(samples('grey', 1, true, Uint8Array.of(5, 255, 6, 255))), null));
  it('fills its numbers, that of Lab too', () => {
    assert.deepEqual(
      alphaOf(samples('grey', 1, true, Uint16Array.of(5, 65535, 6, 1))),
      Uint16Array.of(65535, 1),
    );
    assert.deepEqual(
      alphaOf(samples('lab', 3, true, Int16Array.of(1, 0, 0, 32767, 1, 0, 0, 0))),
      Uint16Array.of(65535, 0),
    );
  });
});
