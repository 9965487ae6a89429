import assert from 'node:assert/strict';
import { doubtfulPapers, doubtNotices, doubtsOf } from '../../src/book/doubts';
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
  it('is told at the word of the paper, where somebody wrote it', () => {
    const glossy = { ...defaultTarget('offset-coated'), paper: 'photo-lustre' as const };
    const targets = ['book', 'cover'].map(name => ({ ...glossy, name }));
    const at = (text: string) =>
      doubtfulPapers({ targets, written: { file: 'evengrey.json', text } }).map(each => [
        each.line,
        each.column,
        each.length,
        each.message,
      ]);
    const words =
      "No such paper is made for coated offset: the figures only move the paper's colour, a guess.";
    const named =
      '{ "targets": {\n  "cover": { "paper": "photo-lustre" },\n  "book": { "house": "h.json" } } }';
    assert.deepEqual(at(named), [[2, 23, 14, words]]);
    assert.deepEqual(at('{\n "paper": "photo-lustre" }')[0], [2, 11, 14, words]);
    assert.deepEqual(doubtfulPapers({ targets }), []);
  });
});
