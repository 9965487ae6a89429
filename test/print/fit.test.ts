import assert from 'node:assert/strict';
import {
  defaultTarget,
  forecastValue,
  paperProblem,
  papers,
  papersFor,
  processes,
  routeProblem,
  signalOf,
} from '../../src/print';
import { readPressProfile } from '../../src/print/profile/read';
import type { PaperId, ProcessId, RouteId } from '../../src/shared/target';
import { printerRgb } from './profile/profiles';

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

describe('routes that a target can take', () => {
  const problem = (process: ProcessId, route: RouteId) => routeProblem({ ...defaultTarget(process), route });
  it('are all that make what it is sent', () => {
    for (const { id } of processes) {
      assert.equal(problem(id, 'unknown'), null);
      assert.equal(problem(id, defaultTarget(id).route), null);
    }
    for (const route of ['separated', 'inks', 'black-plate'] as const)
      assert.equal(problem('liquid-toner', route), null);
  });
  it('are not those that make the other, and it is said what is forecast', () => {
    assert.equal(
      problem('silver-halide', 'inks'),
      'the route "inks" cannot apply on silver halide: forecast there as "rgb"',
    );
    assert.match(problem('dye-transfer', 'separated')!, /forecast there as "rgb"$/);
    assert.match(problem('offset-coated', 'rgb')!, /forecast there as "separated"$/);
  });
  it("go by the print house's own profile where that takes R, G, B", async () => {
    const target = { ...defaultTarget('inkjet'), pressProfile: await readPressProfile(printerRgb()) };
    assert.equal(signalOf(target), 'rgb');
    assert.equal(routeProblem({ ...target, route: 'rgb' }), null);
    assert.match(routeProblem({ ...target, route: 'separated' })!, /forecast there as "rgb"$/);
    assert.equal(forecastValue(grey, { ...target, route: 'separated' }).condition.route, 'rgb');
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
