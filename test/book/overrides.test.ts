import assert from 'node:assert/strict';
import { override } from '../../src/book/overrides';
import { defaultTarget } from '../../src/print';

describe('conditions asked for on the spot', () => {
  const run = { ...defaultTarget('offset-coated'), name: 'run', inkLimit: 280 };
  const dummy = { ...defaultTarget('inkjet'), name: 'dummy' };

  it('change every target in paper and light', () => {
    const changed = override([run, dummy], { light: 'A' });
    assert.deepEqual(
      changed.map(t => [t.name, t.light]),
      [
        ['run', 'A'],
        ['dummy', 'A'],
      ],
    );
  });

  it('take the targets of a process, or that process as it comes', () => {
    assert.deepEqual(override([run, dummy], { process: 'offset-coated' }), [run]);
    assert.deepEqual(override([run], { process: 'inkjet', paper: 'gloss-coated' }), [
      { ...defaultTarget('inkjet'), paper: 'gloss-coated' },
    ]);
    assert.deepEqual(override([], {}), []);
  });
});
