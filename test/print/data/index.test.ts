import assert from 'node:assert/strict';
import { xyzToLab } from '../../../src/colour/lab';
import { measuredPress } from '../../../src/colour/press';
import { pressData } from '../../../src/print/data';

describe('press conditions', () => {
  it('are made once, the measured ones by colour/', () => {
    assert.equal(pressData('TR006'), measuredPress('TR006'));
    assert.equal(pressData('uncoated'), pressData('uncoated'));
  });
  it('of uncoated paper have the published papers', () => {
    // FOGRA47 95/0/-2, FOGRA52 93.5/2.5/-10
    const paper = (id: 'uncoated' | 'uncoated-bright') => {
      const xyz = new Float64Array(3);
      pressData(id).xyz([0, 0, 0, 0], xyz);
      return [...xyzToLab(xyz, xyz)].map(v => Math.round(v * 100) / 100);
    };
    assert.deepEqual(
      paper('uncoated').map(v => v + 0),
      [95, 0, -2],
    );
    assert.deepEqual(paper('uncoated-bright'), [93.5, 2.5, -10]);
  });
});
