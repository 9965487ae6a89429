import assert from 'node:assert/strict';
import { channelsOf, floatFormat } from '../../../src/colour/icc/transform';

describe("LittleCMS' formats", () => {
  it('are those of its lcms2.h: TYPE_GRAY_FLT, TYPE_RGB_FLT, TYPE_CMYK_FLT, TYPE_Lab_FLT', () => {
    assert.deepEqual(
      (['grey', 'rgb', 'cmyk', 'lab'] as const).map(floatFormat),
      [0x43000c, 0x44001c, 0x460024, 0x4a001c],
    );
  });

  it('have as many channels as the space', () => {
    assert.deepEqual((['grey', 'rgb', 'cmyk', 'lab'] as const).map(channelsOf), [1, 3, 4, 3]);
  });
});
