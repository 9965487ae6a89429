import assert from 'node:assert/strict';
import { processes } from '../../src/print/processes';
import { defaultTarget } from '../../src/print/target';

describe('default target', () => {
  it('has the process’s paper and daylight; R, G, B kept where the process takes them, else a route nobody stated', () => {
    for (const { id, paper, signal } of processes) {
      const target = defaultTarget(id);
      assert.deepEqual([target.paper, target.light, target.encodings], [paper, 'D50', null]);
      assert.equal(target.route, signal === 'rgb' ? 'rgb' : 'unknown');
    }
  });
});
