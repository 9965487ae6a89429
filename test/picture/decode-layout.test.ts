import assert from 'node:assert/strict';
import { applyPalette, invert, keepChannels, spread, unpremultiply } from '../../src/picture/decode-layout';

describe('keepChannels', () => {
  const stored = Uint8Array.of(1, 2, 3, 4, 5, 11, 12, 13, 14, 15);

  it('drops what lies behind', () => {
    assert.deepEqual([...keepChannels(stored.slice(), 5, 3)], [1, 2, 3, 11, 12, 13]);
  });

  it('keeps alpha wherever it lies', () => {
    assert.deepEqual([...keepChannels(stored.slice(), 5, 3, 3)], [1, 2, 3, 4, 11, 12, 13, 14]);
    assert.deepEqual([...keepChannels(stored.slice(), 5, 1, 4)], [1, 5, 11, 15]);
  });

  it('copies nothing where nothing is to be dropped', () => {
    assert.equal(keepChannels(stored, 5, 5), stored);
    assert.equal(keepChannels(stored, 5, 4, 4), stored);
  });
});

describe('invert', () => {
  it('turns colours round and leaves alpha', () => {
    const data = Uint8Array.of(0, 100, 7, 255, 0, 9);
    invert(data, 3, 2, 255);
    assert.deepEqual([...data], [255, 155, 7, 0, 255, 9]);
    const plain = Float32Array.of(0, 0.25, 1);
    invert(plain, 1, 1, 1);
    assert.deepEqual([...plain], [1, 0.75, 0]);
  });
});

describe('unpremultiply', () => {
  it('rounds, clamps what no coverage allows, and leaves nothing where nothing is covered', () => {
    const data = Uint8Array.of(100, 50, 128, 9, 9, 0, 7, 8, 255, 200, 1, 100);
    unpremultiply(data, 3);
    assert.deepEqual([...data], [199, 100, 128, 0, 0, 0, 7, 8, 255, 255, 3, 100]);
    const wide = Uint16Array.of(10000, 32768);
    unpremultiply(wide, 2);
    assert.deepEqual([...wide], [20000, 32768]);
  });
});

describe('spread', () => {
  it('brings the largest value of ten bits to full, and every value back exactly', () => {
    const data = Uint16Array.from({ length: 1024 }, (_, i) => i << 6);
    spread(data, 10);
    assert.deepEqual([data[0], data[1023]], [0, 65535]);
    for (let i = 0; i < 1024; i++) assert.equal(Math.round((data[i] * 1023) / 65535), i);
  });
});

describe('applyPalette', () => {
  const indices = (bits: number, ...values: number[]) =>
    Uint8Array.from(values, v => (v * 255) / (2 ** bits - 1));

  it('reads 16-bit entries as written x 257 or x 256, and rounds what lies between', () => {
    const map = (factor: number) => [0, 255, 10, 20, 30, 40].map(v => v * factor);
    for (const factor of [256, 257])
      assert.deepEqual([...applyPalette(indices(1, 0, 1), 1, map(factor))], [0, 10, 30, 255, 20, 40]);
    assert.equal(applyPalette(indices(1, 0), 1, [257 * 9 + 200, 0, 0, 0, 0, 0])[0], 10);
  });

  it('reads the 8-bit entries of old writers', () => {
    assert.deepEqual([...applyPalette(indices(1, 1), 1, [0, 255, 1, 2, 3, 4])], [255, 2, 4]);
  });

  it('finds every one of 16 colours', () => {
    const map = Array.from({ length: 48 }, (_, i) => i * 257);
    const found = applyPalette(indices(4, ...Array.from({ length: 16 }, (_, i) => i)), 4, map);
    for (let i = 0; i < 16; i++) assert.deepEqual([...found.subarray(i * 3, i * 3 + 3)], [i, i + 16, i + 32]);
  });
});
