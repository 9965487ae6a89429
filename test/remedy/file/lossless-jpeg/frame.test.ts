import assert from 'node:assert/strict';
import { type Frame, frameOf, isFrame, isLuminance } from '../../../../src/remedy/file/lossless-jpeg/frame';
import { Unusual } from '../../../../src/remedy/file/lossless-jpeg/unusual';

/** A frame of 20 x 10 pixels; components as id, sampling factors, table. */
const body = (components: number[][], precision = 8) =>
  Uint8Array.from([precision, 0, 10, 0, 20, components.length, ...components.flat()]);
const ycc = (luminance: number, colour = 0x11) => [
  [1, luminance, 0],
  [2, colour, 1],
  [3, colour, 1],
];

describe('the frame of a JPEG', () => {
  it('has whole MCUs, as large as luminance is sampled', () => {
    const size = (of: number[][], marker = 0xc0) => {
      const { mcusAcross, mcusDown } = frameOf(marker, body(of));
      return [mcusAcross, mcusDown];
    };
    assert.deepEqual(size(ycc(0x11)), [3, 2]);
    assert.deepEqual(size(ycc(0x22)), [2, 1]);
    assert.deepEqual(size(ycc(0x21)), [2, 2]);
    assert.deepEqual(size([[1, 0x22, 0]]), [3, 2], 'a single component is never interleaved');
  });

  it('is progressive or not, by its marker', () => {
    assert.deepEqual(
      [0xc0, 0xc1, 0xc2].map(marker => frameOf(marker, body(ycc(0x22))).progressive),
      [false, false, true],
    );
    assert.ok(!isFrame(0xc4), 'a table of codes');
    assert.ok(isFrame(0xc9), 'arithmetic-coded');
  });

  it('is not taken where it is rare or damaged', () => {
    const refused: [what: string, marker: number, body: Uint8Array][] = [
      ['lossless', 0xc3, body(ycc(0x11))],
      ['hierarchical', 0xc5, body(ycc(0x11))],
      ['arithmetic-coded', 0xc9, body(ycc(0x11))],
      ['arithmetic-coded, progressive', 0xca, body(ycc(0x11))],
      ['12 bits', 0xc1, body(ycc(0x11), 12)],
      ['inks', 0xc0, body([...ycc(0x11), [4, 0x11, 0]])],
      ['colour in a higher resolution', 0xc0, body(ycc(0x11, 0x21))],
      ['no sampling', 0xc0, body(ycc(0x01))],
      ['components of one name', 0xc0, body([ycc(0x11)[0], ycc(0x11)[0], ycc(0x11)[1]])],
      ['cut', 0xc0, body(ycc(0x11)).subarray(0, 12)],
      ['larger than any decoder takes', 0xc0, Uint8Array.from([8, 255, 255, 255, 255, 1, 1, 0x11, 0])],
      ['height told later', 0xc0, Uint8Array.from([8, 0, 0, 0, 20, 1, 1, 0x11, 0])],
    ];
    for (const [what, marker, bytes] of refused) assert.throws(() => frameOf(marker, bytes), Unusual, what);
  });

  it('begins with luminance unless it says red, green and blue', () => {
    const named = (ids: number[]): Frame => frameOf(0xc0, body(ids.map(id => [id, 0x11, 0])));
    assert.ok(isLuminance(named([1, 2, 3]), null));
    assert.ok(isLuminance(named([0, 1, 2]), 1));
    assert.ok(isLuminance(named([1]), 0), 'grey has nothing to transform');
    assert.ok(!isLuminance(named([1, 2, 3]), 0), "Adobe's marker: no transform");
    assert.ok(!isLuminance(named([82, 71, 66]), null), 'R, G, B by name');
  });
});
