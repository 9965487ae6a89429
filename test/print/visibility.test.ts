import assert from 'node:assert/strict';
import { visibility } from '../../src/print/visibility';

describe('visibility of a tint', () => {
  it('is full from L* 35 up and falls to a tenth towards black', () => {
    assert.equal(visibility(95), 1);
    assert.equal(visibility(35), 1);
    assert.equal(visibility(20), 0.5);
    assert.equal(visibility(3), 0.1);
  });
});
