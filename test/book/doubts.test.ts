import assert from 'node:assert/strict';
import { doubtNotices, doubtsOf } from '../../src/book/doubts';
import { defaultTarget } from '../../src/print';

describe('what a target cannot have', () => {
  it('is nothing by default', () => {
    for (const process of ['silver-halide', 'offset-coated', 'inkjet'] as const)
      assert.deepEqual(doubtsOf(defaultTarget(process)), []);
  });
  it('is a paper or a route that there is not for its process, each in a sentence', () => {
    const target = {
      ...defaultTarget('silver-halide'),
      name: 'dummy',
      paper: 'uncoated' as const,
      route: 'black-plate' as const,
    };
    assert.deepEqual(doubtNotices(target), [
      'The target "dummy": no such paper is made for silver halide: the figures only move the paper\'s colour, a guess.',
      'The target "dummy": the route "black-plate" cannot apply on silver halide: forecast there as "rgb".',
    ]);
  });
});
