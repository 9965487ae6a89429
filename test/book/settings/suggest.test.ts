import assert from 'node:assert/strict';
import { suggest } from '../../../src/book/settings/suggest';

describe('suggestions', () => {
  const processes = ['silver-halide', 'liquid-toner', 'dry-toner', 'inkjet'];
  it('finds a slip of the finger, other spelling and a beginning', () => {
    assert.equal(suggest('inkjte', processes), 'inkjet');
    assert.equal(suggest('Silver Halide', processes), 'silver-halide');
    assert.equal(suggest('silver', processes), 'silver-halide');
  });
  it('finds two letters that changed places, in a short word too', () => {
    assert.equal(suggest('ligth', ['light', 'paper', 'route']), 'light');
    assert.equal(suggest('lgiht', ['light', 'paper', 'route']), 'light');
    assert.equal(suggest('lgith', ['light', 'paper', 'route']), null);
    assert.equal(suggest('ab', ['ba']), 'ba');
  });
  it('does not guess', () => {
    assert.equal(suggest('laser', processes), null);
    assert.equal(suggest('x', []), null);
  });
});
