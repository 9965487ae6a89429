import assert from 'node:assert/strict';
import { defaultTarget, forecastValue, paperProblem, papers, papersFor, processes } from '../../src/print';
import type { PaperId } from '../../src/shared/target';

const grey = { space: 'grey' as const, values: [0.5] };

describe('papers that a process is printed on', () => {
  it('are its usual ones, and any that was measured', () => {
    for (const { id } of processes) {
      for (const paper of papersFor(id)) assert.equal(paperProblem(id, paper), null, `${id} ${paper}`);
      assert.equal(paperProblem(id, { lab: [90, 0, 0] }), null);
    }
  });

  // common practice, no source: chromogenic and dye transfer papers are coated by their makers, no press prints on them
  it('leave out those that nobody prints, which are still answered for, as a guess', () => {
    for (const [process, paper] of [
      ['silver-halide', 'uncoated'],
      ['dye-transfer', 'gloss-coated'],
      ['offset-uncoated', 'photo-gloss'],
      ['offset-coated', 'photo-lustre'],
    ] as const) {
      assert.match(paperProblem(process, paper)!, /^no such paper is made for /);
      const { ground, condition } = forecastValue(grey, { ...defaultTarget(process), paper });
      assert.equal(ground[0], paperProblem(process, paper));
      assert.equal(condition.basis, 'generic');
    }
    for (const { id } of processes)
      for (const paper of papers)
        assert.ok(forecastValue(grey, { ...defaultTarget(id), paper: paper.id as PaperId }).zones.length);
  });
});

describe('black of inkjet', () => {
  // Dmax of inkjet papers: gloss 2.1-2.5, matt 1.5-1.75 (from memory, medium); density to L*: 2.2 is 5.7, 1.7 is 15.5
  it('is deepest on photographic paper, and flattest on uncoated', () => {
    const black = (paper: PaperId) =>
      forecastValue(
        { space: 'rgb', values: [0, 0, 0] },
        { ...defaultTarget('inkjet'), paper, route: 'separated' },
      ).range.black;
    assert.ok(black('photo-gloss') > 3 && black('photo-gloss') < 9, `${black('photo-gloss')}`);
    assert.ok(black('matt-coated') > 14 && black('matt-coated') < 19, `${black('matt-coated')}`);
    assert.ok(black('uncoated') > 19 && black('uncoated') < 25, `${black('uncoated')}`);
  });
});
