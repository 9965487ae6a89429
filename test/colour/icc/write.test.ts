import assert from 'node:assert/strict';
import { loadIcc } from '../../../src/colour/icc';
import { plainProfile } from '../../../src/colour/icc/write';
import { SRGB_TO_XYZ, srgbToLab } from '../../../src/colour/srgb';
import { gammaCurve, srgbCurve } from '../../../src/colour/tone-curves';

const rgb = () => plainProfile({ description: 'Three', decode: srgbCurve.decode, primaries: SRGB_TO_XYZ });

describe('a profile of our own making', () => {
  it('says what it is and is the same to the byte whenever it is written', async () => {
    const profile = (await loadIcc()).open(rgb());
    assert.deepEqual(
      [profile.description, profile.space, profile.class, profile.version],
      ['Three', 'rgb', 'display', 2.4],
    );
    profile.close();
    assert.deepEqual(rgb(), rgb());
  });

  it('gives the colours that it was made for, and equal channels none at all', async () => {
    const profile = (await loadIcc()).open(rgb());
    const values = [0.2, 0.5, 0.9, 1, 0, 0, 0.03, 0.6, 0.1, 0.5, 0.5, 0.5, 1, 1, 1];
    const lab = profile.transformToLab('relative', values);
    profile.close();
    for (let i = 0; i < values.length; i += 3) {
      const wanted = srgbToLab(values.slice(i, i + 3), new Float64Array(3));
      const off = Math.hypot(...wanted.map((v, c) => v - lab[i + c]));
      assert.ok(off < 0.02, `${values.slice(i, i + 3)}: off by ${off}`);
    }
    for (const i of [9, 12]) assert.ok(Math.hypot(lab[i + 1], lab[i + 2]) < 1e-3, `${lab.slice(i, i + 3)}`);
  });

  it('of one channel has one curve, whichever', async () => {
    const bytes = plainProfile({ description: 'One', decode: gammaCurve(1.8).decode, primaries: null });
    const profile = (await loadIcc()).open(bytes);
    assert.equal(profile.space, 'grey');
    const [L] = profile.transformToLab('relative', [0.5]);
    profile.close();
    // 0.5 ^ 1.8 = 0.28717; CIE 015:2018, 8.2.1
    assert.ok(Math.abs(L - (116 * Math.cbrt(0.287175) - 16)) < 0.01, `${L}`);
  });
});
