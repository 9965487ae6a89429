import assert from 'node:assert/strict';
import { toldApart } from '../../src/preview/told-apart';

describe('pictures told apart by name', () => {
  it('have their folder only where another has their name', () => {
    const [one, two] = ['one/night.jpg', 'two/night.jpg'];
    assert.equal(toldApart(one, [one, two, null]), 'one/night.jpg');
    assert.equal(toldApart(one, [one, 'two/day.jpg', null]), 'night.jpg');
    assert.equal(toldApart('night.jpg', [two]), 'night.jpg');
  });
});
