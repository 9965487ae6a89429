import assert from 'node:assert/strict';
import { xyzToLab } from '../../../src/colour/lab';
import { measuredPress, type PressSet, pressDataText } from '../../../src/colour/press';

describe('shipped press data', () => {
  // papers of the Technical Reports: TR 006 95/0/-2, TR 003 92.5/0/0, TR 005 90/0/4.1
  const papers: [PressSet, number, number, number][] = [
    ['TR003', 92.5, 0, 0],
    ['TR005', 90, 0, 4.1],
    ['TR006', 95, 0, -2],
  ];
  for (const [id, L, a, b] of papers)
    it(`${id} has its paper, names its source and is kept once read`, () => {
      const xyz = new Float64Array(3);
      measuredPress(id).xyz([0, 0, 0, 0], xyz);
      const lab = xyzToLab(xyz, xyz);
      assert.ok(Math.hypot(lab[0] - L, lab[1] - a, lab[2] - b) < 0.12);
      assert.match(pressDataText(id), new RegExp(`TR ?${id.slice(2)}-2007`));
      assert.equal(measuredPress(id), measuredPress(id));
    });

  it('TR006 prints the solids of ISO 12647-2:2004/Amd 1 on coated paper', () => {
    // white backing, as FOGRA39 publishes them; within 1.2 (black is a little darker in TR 006)
    const solids: [number[], number[]][] = [
      [
        [1, 0, 0, 0],
        [55, -37, -50],
      ],
      [
        [0, 1, 0, 0],
        [48, 74, -3],
      ],
      [
        [0, 0, 1, 0],
        [89, -5, 93],
      ],
      [
        [0, 0, 0, 1],
        [16, 0, 0],
      ],
      [
        [0, 1, 1, 0],
        [47, 68, 48],
      ],
    ];
    const xyz = new Float64Array(3);
    for (const [inks, [L, a, b]] of solids) {
      measuredPress('TR006').xyz(inks, xyz);
      const lab = xyzToLab(xyz, xyz);
      assert.ok(Math.hypot(lab[0] - L, lab[1] - a, lab[2] - b) < 1.2, `${inks}`);
    }
  });
});
