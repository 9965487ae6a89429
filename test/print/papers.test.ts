import assert from 'node:assert/strict';
import { paperOf, papers } from '../../src/print/papers';

describe('papers', () => {
  // whites of published data: TR 006 and FOGRA39, FOGRA51, TR 003, TR 005, FOGRA47, FOGRA52, ISO 12647-2:2004 type 5
  const published: Record<string, number[]> = {
    'gloss-coated': [95, 0, -2],
    'gloss-coated-bright': [95, 1.5, -6],
    'matt-coated': [95, 1, -4],
    'grade-3-coated': [92.5, 0, 0],
    'grade-5-coated': [90, 0, 4.1],
    uncoated: [95, 0, -2],
    'uncoated-bright': [93.5, 2.5, -10],
    'uncoated-warm': [90, 0, 9],
  };
  for (const [id, white] of Object.entries(published))
    it(`${id} has the published white`, () =>
      assert.deepEqual(papers.find(paper => paper.id === id)?.white, white));
  it('of the user’s own keep what was measured', () => {
    const paper = paperOf({ lab: [92, 1, 3], brightened: 'low' });
    assert.deepEqual([paper.id, paper.white, paper.brightener], ['measured', [92, 1, 3], 'low']);
    assert.equal(paperOf({ lab: [92, 1, 3] }).brightener, 'none');
  });
  it('that are not known are refused with the list', () =>
    assert.throws(
      () => paperOf('vellum' as never),
      /no paper "vellum"; known are photo-gloss, photo-lustre/,
    ));
});
