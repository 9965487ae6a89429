import assert from 'node:assert/strict';
import {
  changesOf,
  claimsOn,
  isOfBook,
  matchClaims,
  spares,
  waivedOn,
} from '../../../src/book/revisions/claims';
import type { Finding, PictureReport } from '../../../src/shared/finding';

const finding = (
  rule: string,
  data: Finding['data'] = {},
  severity: Finding['severity'] = 'warning',
): Finding => ({
  ...{ rule, severity, data },
  message: rule,
});
const rules = (findings: readonly Finding[]) => findings.map(({ rule }) => rule);

describe('findings before and after', () => {
  it('are one by rule, target and severity, whatever their figures', () => {
    const {
      new: fresh,
      ended,
      unchanged,
    } = changesOf(
      [finding('a', { share: 1 }), finding('b', { target: 'x' }), finding('c')],
      [finding('a', { share: 2 }), finding('b', { target: 'y' }), finding('c', {}, 'error')],
    );
    assert.deepEqual([rules(fresh), rules(ended), rules(unchanged)], [['b', 'c'], ['b', 'c'], ['a']]);
  });
  it('ask for something else where what to save as is another, and not where a target is called otherwise', () => {
    const asks = (save: string, target?: string) => finding('a', { save, ...(target && { target }) });
    const advice = (was: Finding, is: Finding) => changesOf([was], [is]).advice;
    assert.deepEqual(advice(asks('x', 't'), asks('y', 't')), { target: 't', before: 'x', after: 'y' });
    assert.deepEqual(advice(asks('x'), asks('y')), { target: null, before: 'x', after: 'y' });
    assert.equal(advice(asks('x'), asks('x')), undefined);
    assert.equal(advice(finding('a'), asks('y')), undefined);
    const on = (first: string) => asks(`x for target "${first}" and y for target "dummy"`);
    assert.equal(advice(on('edition'), on('print')), undefined);
  });
  it('count each where there are several alike', () => {
    const {
      new: fresh,
      ended,
      unchanged,
    } = changesOf([finding('a'), finding('a'), finding('a')], [finding('a')]);
    assert.deepEqual([fresh.length, ended.length, unchanged.length], [0, 2, 1]);
  });
  it('of the book are those of a picture that they name, and not of one that was only counted', () => {
    const picture = { path: 'x.tif', findings: [finding('own')] } as unknown as PictureReport;
    const shared = [
      finding('named', { pictures: ['x.tif', 'y.tif'] }),
      finding('convert', { convert: ['y.tif'], pictures: ['x.tif'] }),
      finding('note', { pictures: ['x.tif'] }, 'note'),
      finding('counted', { counted: ['x.tif'] }, 'note'),
      finding('whole', { groups: 2 }),
    ];
    assert.deepEqual(rules(claimsOn(picture, shared)), ['own', 'named', 'note']);
    assert.deepEqual(rules(shared.filter(isOfBook)), ['counted', 'whole']);
  });
  it('that no way of storing has the majority speak against the match of every picture in it', () => {
    const split = finding('mixed', {
      convert: ['y.tif'],
      groups: [{ pictures: ['x.tif'] }, { pictures: ['y.tif'] }],
    });
    const of = (path: string) =>
      rules(matchClaims({ path, findings: [] } as unknown as PictureReport, [split]));
    assert.deepEqual(['x.tif', 'y.tif', 'z.tif'].map(of), [['mixed'], ['mixed'], []]);
    assert.deepEqual(
      ['x.tif', 'y.tif', 'z.tif'].map(path => spares(split, path)),
      [true, false, false],
      'though it asks nothing of those that are stored as all are to be',
    );
  });
  it('have ended for what was put right, where the rest of them is waived', () => {
    const asking = (...convert: string[]) =>
      finding('mixed', { convert, groups: [{ pictures: ['x.tif'] }, { pictures: convert }] });
    const [mended, waived] = ['x.tif', 'y.tif'].map(path => {
      const picture = { path, findings: [] } as unknown as PictureReport;
      const was = claimsOn(picture, [asking('x.tif', 'y.tif')]);
      const waivedSince = waivedOn(picture, { waived: [{ ...asking('y.tif'), reason: '' }] });
      return rules(changesOf(was, [], { waivedSince }).ended);
    });
    assert.deepEqual([mended, waived], [['mixed'], []]);
  });
});
