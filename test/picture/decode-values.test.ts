import assert from 'node:assert/strict';
import { ownValues } from '../../src/picture/decode-values';

describe('values of the decoder', () => {
  it('outlive what it does with its own memory', () => {
    const memory = new SharedArrayBuffer(64);
    const window = Buffer.from(memory, 8, 16);
    window.writeUInt16LE(513, 0);
    const values = ownValues(window, 'ushort');
    new Uint8Array(memory).fill(255);
    assert.deepEqual([...values], [513, 0, 0, 0, 0, 0, 0, 0]);
  });

  it('are not copied where they are nobody else’s', () => {
    const data = Buffer.alloc(1 << 20);
    assert.equal(ownValues(data, 'uchar').buffer, data.buffer);
  });

  it('are numbers of the depth that is told', () => {
    const data = Buffer.from(Float32Array.of(0.5, -2).buffer);
    assert.deepEqual([...ownValues(data, 'float')], [0.5, -2]);
    assert.deepEqual([...ownValues(data.subarray(4), 'short')], [0, -16384]);
    assert.throws(() => ownValues(data, 'double'), /unsupported sample depth double/);
  });
});
