import assert from 'node:assert/strict';
import { Values } from '../../../src/picture/look/values';
import type { Samples } from '../../../src/picture/types';

const read = (samples: Omit<Samples, 'width' | 'height'>) => {
  const values = new Values({ width: 1, height: 1, ...samples });
  const out = new Float32Array(samples.channels);
  values.read(0, 1, out);
  return { opacity: values.opacity(0), values: [...out].map(v => Number(v.toFixed(3))) };
};

describe('stored values as a meaning takes them', () => {
  it('are in steps of 1/255 whatever the depth, and lie on paper where they are seen through', () => {
    const rgb = { channels: 3, space: 'rgb' } as const;
    assert.deepEqual(read({ ...rgb, alpha: false, data: Uint8Array.of(1, 2, 255) }).values, [1, 2, 255]);
    assert.deepEqual(read({ ...rgb, alpha: false, data: Uint16Array.of(257, 0, 65535) }).values, [1, 0, 255]);
    const half = read({ ...rgb, alpha: true, data: Uint8Array.of(0, 100, 255, 51) });
    assert.deepEqual(half, { opacity: 0.2, values: [204, 224, 255] });
    const ink = { channels: 4, space: 'cmyk', alpha: true } as const;
    assert.deepEqual(read({ ...ink, data: Uint8Array.of(100, 0, 0, 255, 51) }).values, [20, 0, 0, 51]);
  });

  it('are black or white where floating point goes beyond, and black where it is no number', () => {
    const data = Float32Array.of(-1, 2, Number.NaN);
    assert.deepEqual(read({ channels: 3, space: 'rgb', alpha: false, data }).values, [0, 255, 0]);
  });

  it('are in their own units in Lab', () => {
    const data = Int16Array.of(16384, -256, 512, 32767);
    const lab = read({ channels: 3, space: 'lab', alpha: true, data });
    assert.deepEqual(lab, { opacity: 1, values: [50.002, -1, 2] });
  });
});
