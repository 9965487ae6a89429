import assert from 'node:assert/strict';
import { xyzToLab } from '../../../src/colour/lab';
import { characterisedInks, type Patch } from '../../../src/colour/press/characterised';
import { dE00, dE76, foreignSet, labAt, shippedSet } from '../../print/press-sets';

const lab = (patch: Patch) => xyzToLab(patch.xyz, new Float64Array(3));

/** Errors (CIEDE2000) at the patches that no grid and no ramp uses: several inks, between the grids' levels. */
function heldOut(patches: readonly Patch[]): number[] {
  const at = labAt(patches);
  const errors = patches.map(patch => dE00(at(...patch.inks), lab(patch)));
  return errors.filter(error => error > 1e-6).sort((x, y) => x - y);
}

describe('interpolated characterisation data', () => {
  // The data themselves are the published source: ANSI/CGATS TR 003, 005, 006; FOGRA29L and FOGRA39L of Debian's
  // icc-profiles-free. Limits: what this method reached before on the same sets (mean 0.03-0.10, most 0.8).
  const sets: [string, () => Patch[]][] = [
    ['TR003', () => shippedSet('TR003')],
    ['TR005', () => shippedSet('TR005')],
    ['TR006', () => shippedSet('TR006')],
    ['FOGRA39L', () => foreignSet('FOGRA39L')],
    ['FOGRA29L', () => foreignSet('FOGRA29L')],
  ];
  for (const [name, load] of sets)
    it(`meets the patches of ${name} that it does not use`, function () {
      const errors = heldOut(load());
      const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
      const most = errors[errors.length - 1];
      this.test!.title += `: ${errors.length} patches, mean dE00 ${mean.toFixed(3)}, most ${most.toFixed(2)}`;
      assert.ok(errors.length > 100);
      assert.ok(mean < 0.11 && most < 0.85);
    });

  it('meets every patch of its grids and every ink alone', () => {
    const patches = shippedSet('TR006');
    const at = labAt(patches);
    const levels = [0, 10, 20, 30, 40, 55, 70, 85, 100];
    const grid = patches.filter(p => p.inks[3] === 0 && p.inks.every(v => levels.includes(v)));
    assert.ok(grid.length >= 729);
    for (const patch of grid) assert.ok(dE76(at(...patch.inks), lab(patch)) < 1e-9);
    for (const ink of [0, 1, 2, 3]) {
      const ramp = patches.filter(p => p.inks.every((v, i) => i === ink || v === 0));
      assert.ok(ramp.length > 15);
      for (const patch of ramp) assert.ok(dE76(at(...patch.inks), lab(patch)) < 0.7, patch.inks.join('/'));
    }
  });

  it('clamps inks beyond nothing and solid', () => {
    const at = labAt(shippedSet('TR006'));
    assert.deepEqual(at(-5, 0, 0, 130), at(0, 0, 0, 100));
  });

  it('is smooth: a step of 0.1 % never moves a colour by more than 0.3', () => {
    const at = labAt(shippedSet('TR006'));
    for (let v = 0; v < 100; v += 0.1)
      assert.ok(dE76(at(v, v, v, v / 2), at(v + 0.1, v + 0.1, v + 0.1, v / 2 + 0.05)) < 0.3, `${v}`);
  });

  it('refuses data without complete grids', () =>
    assert.throws(
      () => characterisedInks(shippedSet('TR006').filter(p => p.inks[3] < 100)),
      /complete CMY grids at K 0 and K 100/,
    ));
});

describe('near-neutral triplets', () => {
  // TR 015's triplets (from memory), which the conditions of 2007 were made for: dCh to the grey aim of ISO 12647-2:2013
  // on TR 006's own paper within 0.5
  const paper = [95, -0.02, -1.96];
  for (const [c, m, y] of [
    [25, 19, 19],
    [50, 40, 40],
    [75, 66, 66],
  ])
    it(`${c}/${m}/${y} is a grey on TR 006`, () => {
      const [L, a, b] = labAt(shippedSet('TR006'))(c, m, y, 0);
      const share = 1 - (0.85 * (paper[0] - L)) / (paper[0] - 23);
      assert.ok(Math.hypot(a - paper[1] * share, b - paper[2] * share) < 0.5);
    });
});
