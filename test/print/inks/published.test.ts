import assert from 'node:assert/strict';
import { xyzToLab } from '../../../src/colour/lab';
import { measuredPress } from '../../../src/colour/press';
import type { Patch } from '../../../src/colour/press/characterised';
import { pressData } from '../../../src/print/data';
import { type PublishedCondition, publishedInks } from '../../../src/print/inks/published';
import { dE76, foreignSet } from '../press-sets';

const labOf = (xyz: ArrayLike<number>) => xyzToLab(xyz, new Float64Array(3));

/** What would be published of a measured set: solids, and tone value increase of each ink alone. */
function asPublished(patches: readonly Patch[]): PublishedCondition {
  const at = (c: number, m: number, y: number, k: number) =>
    patches.find(p => p.inks.join() === [c, m, y, k].join())!.xyz;
  const paper = at(0, 0, 0, 0);
  const follows = [0, 1, 2, 1];
  const increase = [0, 1, 2, 3].map(ink => {
    const alone = (v: number) => {
      const inks = [0, 0, 0, 0];
      inks[ink] = v;
      return patches.find(p => p.inks.join() === inks.join())!.xyz[follows[ink]];
    };
    return [10, 20, 30, 40, 50, 60, 70, 80, 90].map(
      v => (100 * (paper[follows[ink]] - alone(v))) / (paper[follows[ink]] - alone(100)) - v,
    );
  });
  return {
    solids: {
      paper,
      c: at(100, 0, 0, 0),
      m: at(0, 100, 0, 0),
      y: at(0, 0, 100, 0),
      my: at(0, 100, 100, 0),
      cy: at(100, 0, 100, 0),
      cm: at(100, 100, 0, 0),
      cmy: at(100, 100, 100, 0),
      k: at(0, 0, 0, 100),
      cmyk: at(100, 100, 100, 100),
    },
    increase,
  };
}

describe('inks from published solids with a borrowed shape', () => {
  // Outside check: FOGRA29L (uncoated) and FOGRA39L (coated) of Debian's icc-profiles-free, of which the model is given
  // no more than a standard publishes. Greys are what matters: patches with C* below 6 that hold coloured inks.
  for (const [name, rmsA, rmsB] of [
    ['FOGRA29L', 1.4, 1.2],
    ['FOGRA39L', 0.3, 0.45],
  ] as const)
    it(`meets the greys of ${name}`, function () {
      const patches = foreignSet(name);
      const table = publishedInks(asPublished(patches), measuredPress('TR006'));
      const xyz = new Float64Array(3);
      const errors = patches
        .map(patch => ({ patch, lab: labOf(patch.xyz) }))
        .filter(({ patch, lab }) => Math.hypot(lab[1], lab[2]) < 6 && patch.inks.slice(0, 3).some(v => v > 0))
        .map(({ patch, lab }) => {
          table.xyz(
            patch.inks.map(v => v / 100),
            xyz,
          );
          const here = labOf(xyz);
          return [here[1] - lab[1], here[2] - lab[2]];
        });
      const rms = (i: number) => Math.sqrt(errors.reduce((sum, e) => sum + e[i] ** 2, 0) / errors.length);
      this.test!.title += `: ${errors.length} patches, rms a* ${rms(0).toFixed(2)}, b* ${rms(1).toFixed(2)}`;
      assert.ok(errors.length > 100);
      assert.ok(rms(0) < rmsA && rms(1) < rmsB);
    });

  it('meets the published solids exactly', () => {
    // FOGRA47 and FOGRA52 solids as published with the conditions
    const solids: [Parameters<typeof pressData>[0], number[], number[]][] = [
      ['uncoated', [1, 0, 0, 0], [60, -26, -44]],
      ['uncoated', [0, 0, 0, 1], [31, 1, 1]],
      ['uncoated-bright', [0, 1, 1, 0], [52.59, 55.96, 25.52]],
      ['uncoated-bright', [1, 1, 1, 1], [26.36, 1.5, 1.35]],
    ];
    const xyz = new Float64Array(3);
    for (const [id, inks, lab] of solids) {
      pressData(id).xyz(inks, xyz);
      assert.ok(dE76(labOf(xyz), lab) < 0.01, `${id} ${inks}`);
    }
  });

  it('follows the published ramp of black', () => {
    // Black alone at 30, 50, 70, 90 %, from the characterisation data of FOGRA47 and FOGRA52
    const ramps: [Parameters<typeof pressData>[0], number, number[]][] = [
      ['uncoated', 0.3, [74.4, 0, -1]],
      ['uncoated', 0.5, [60.9, 0.2, -0.3]],
      ['uncoated', 0.7, [47.9, 0.5, 0.3]],
      ['uncoated', 0.9, [36, 0.8, 0.8]],
      ['uncoated-bright', 0.3, [73, 1.9, -7.3]],
      ['uncoated-bright', 0.5, [60.6, 1.6, -5.3]],
      ['uncoated-bright', 0.7, [48.3, 1.5, -2.9]],
      ['uncoated-bright', 0.9, [37, 1.3, -0.8]],
    ];
    const xyz = new Float64Array(3);
    for (const [id, k, lab] of ramps) {
      pressData(id).xyz([0, 0, 0, k], xyz);
      assert.ok(dE76(labOf(xyz), lab) < 1, `${id} ${k}: ${[...labOf(xyz)].map(v => v.toFixed(2))}`);
    }
  });
});
