import assert from 'node:assert/strict';
import { labFromBytes, labFromFloats, labFromWords } from '../../src/picture/decode-lab';

// white, and L* 50 with a* 20 and b* -30, as each way stores them
const WHITE = [32767, 0, 0];
const COLOUR = [16384, 5120, -7680];

/** L* has coarser steps in bytes than here. */
function near(found: Int16Array, wanted: number[], stepL: number): void {
  assert.ok(Math.abs(found[0] - wanted[0]) <= stepL, `${found[0]} for ${wanted[0]}`);
  assert.deepEqual([...found.subarray(1)], wanted.slice(1));
}

describe('Lab', () => {
  it('in bytes: CIELab signed (TIFF 6.0 section 23), ICCLab with offset 128', () => {
    near(labFromBytes(Uint8Array.of(255, 0, 0), 'cielab', 3), WHITE, 0);
    near(labFromBytes(Uint8Array.of(128, 20, 256 - 30), 'cielab', 3), COLOUR, 128);
    near(labFromBytes(Uint8Array.of(255, 128, 128), 'icclab', 3), WHITE, 0);
    near(labFromBytes(Uint8Array.of(128, 148, 98), 'icclab', 3), COLOUR, 128);
  });

  it('in ICC words: L* 100 is 0xFF00, a* and b* have offset 0x8000', () => {
    near(labFromWords(Uint16Array.of(0xff00, 0x8000, 0x8000), 3), WHITE, 0);
    near(labFromWords(Uint16Array.of(0x7f80, 0x8000 + 20 * 256, 0x8000 - 30 * 256), 3), COLOUR, 1);
    assert.equal(labFromWords(Uint16Array.of(0xffff, 0, 0), 3)[0], 32767, 'never beyond white');
  });

  it('in floats, natural and clamped', () => {
    near(labFromFloats(Float32Array.of(50, 20, -30), 3), COLOUR, 1);
    assert.deepEqual([...labFromFloats(Float32Array.of(120, 300, -300), 3)], [32767, 32767, -32768]);
  });

  it('with alpha: from nothing to 32767', () => {
    assert.deepEqual([...labFromBytes(Uint8Array.of(255, 0, 0, 255), 'cielab', 4)], [...WHITE, 32767]);
    assert.deepEqual([...labFromWords(Uint16Array.of(0, 0x8000, 0x8000, 65535), 4)], [0, 0, 0, 32767]);
    assert.deepEqual([...labFromFloats(Float32Array.of(0, 0, 0, 1), 4)], [0, 0, 0, 32767]);
  });
});
