import assert from 'node:assert/strict';
import { patchesOf } from '../../../src/colour/press/patches';

const text = (fields: string, row: string) => `CTI3
BEGIN_DATA_FORMAT
SAMPLE_ID CMYK_C CMYK_M CMYK_Y CMYK_K ${fields}
END_DATA_FORMAT
BEGIN_DATA
1 0 0 0 0 ${row}
END_DATA
`;

describe('patches of a CGATS text', () => {
  // patch 1 of TR 006: paper, CIELAB 95/-0.02/-1.96, XYZ 84.47/87.62/74.52 (to two decimals)
  it('take CIELAB, and XYZ where there is none; both agree', () => {
    const [fromLab] = patchesOf(text('XYZ_X XYZ_Y XYZ_Z LAB_L LAB_A LAB_B', '1 1 1 95 -0.02 -1.96'));
    const [fromXyz] = patchesOf(text('XYZ_X XYZ_Y XYZ_Z', '84.47 87.62 74.52'));
    fromLab.xyz.forEach((value, i) => {
      assert.ok(Math.abs(value - fromXyz.xyz[i]) < 0.01);
    });
    assert.deepEqual(fromXyz.inks, [0, 0, 0, 0]);
  });
  it('say what is missing', () => assert.throws(() => patchesOf(text('LAB_L', '95')), /no field LAB_A/));
});
