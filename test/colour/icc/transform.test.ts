import assert from 'node:assert/strict';
import { LittleCms } from '../../../src/colour/icc/littlecms';
import { channelsOf, floatFormat, INTENTS, singleTransform } from '../../../src/colour/icc/transform';

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

describe('one colour at a time', () => {
  it('goes on when the library’s memory has grown and moved', async () => {
    (await LittleCms.load()).run(lcms => {
      const [from, to] = [lcms.cmsCreateLab4Profile(null), lcms.cmsCreateLab4Profile(null)];
      const lab = floatFormat('lab');
      const same = lcms._cmsCreateTransform(from, lab, to, lab, INTENTS.relative, 0);
      const one = singleTransform(lcms, same, 'lab');
      const out = new Float64Array(3);
      one([50, 10, -20], out);
      assert.ok(Math.hypot(out[0] - 50, out[1] - 10, out[2] + 20) < 1e-3);
      lcms._malloc(64 * 2 ** 20);
      one([70, -5, 30], out);
      assert.ok(Math.hypot(out[0] - 70, out[1] + 5, out[2] - 30) < 1e-3, `${out}`);
    });
  });
});
