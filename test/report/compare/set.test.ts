import assert from 'node:assert/strict';
import { setVerdict, worst } from '../../../src/report/compare/set';
import type { Match } from '../../../src/shared/comparison';
import { finding, picture } from '../text/support';
import { change, comparison, page } from './support';

const match = (verdict: Match['verdict'], more: Partial<Match> = {}): Match => ({
  ...{ target: 'book', verdict, rules: [], waived: false, distance: 0, probability: 0 },
  ...more,
});
const added = (path: string, verdict: Match['verdict'], more: Partial<Match> = {}) =>
  change('added', path, [page(null, picture(path), { matches: [match(verdict, more)] })]);
const verdict = (...changes: ReturnType<typeof added>[]) => setVerdict(comparison(changes));

describe('the verdict on the set', () => {
  it('names what matches and what does not, each with what it is to match', () => {
    assert.equal(verdict(added('a', 'matches')), 'a matches the rest of the book.');
    assert.equal(verdict(added('a', 'matches'), added('b', 'matches')), 'All 2 match the rest of the book.');
    assert.equal(
      verdict(added('a', 'matches'), added('b', 'differs')),
      'b does not match the rest of the book. a matches the rest of the book.',
    );
    assert.match(verdict(added('a', 'alone')), /^a has no others of the same part and intent to match\.$/);
    assert.equal(setVerdict(comparison([change('deleted', 'a', [page(picture('a'), null)])])), '');
  });

  it('says of what is waived that it does not match all the same', () => {
    const waived = added('b', 'differs', { rules: ['mixed-encodings'], waived: true });
    assert.equal(
      verdict(added('a', 'differs'), waived),
      'a does not match the rest of the book. b does not match the rest of the book, which is waived.',
    );
  });

  it('says why nothing is forecast, and the way out', () => {
    const unknown = (reason: 'not-fetched' | 'truncated' | null, targets = picture('a').targets) => {
      const after = picture('a', [], reason ? { unreadable: { reason, text: 'No.' } } : {});
      return change('added', 'a', [page(null, { ...after, targets }, { matches: [match('unknown')] })]);
    };
    assert.match(
      verdict(unknown('not-fetched')),
      /^a was not fetched, .*: run "git lfs pull" and compare again\.$/,
    );
    assert.match(verdict(unknown('truncated')), /^a cannot be read, .* export it again\.$/);
    assert.match(verdict(unknown(null, [])), /^Nobody said where .* whether a will .* name a "process"/);
    assert.match(verdict(unknown(null)), /^Of a nothing can be forecast/);
  });

  it('says of unchanged pictures that they match no more', () => {
    const odd = { new: [finding('mixed-encodings', 'error', '')], ended: [] };
    const told = comparison([added('a', 'matches')], { others: [{ path: 'c', page: 1, findings: odd }] });
    assert.match(
      setVerdict(told),
      /book\. c, unchanged itself, does not match the rest of the book any more\.$/,
    );
    const other = { new: [finding('low-resolution', 'error', '')], ended: [] };
    assert.equal(setVerdict(comparison([], { others: [{ path: 'c', page: 1, findings: other }] })), '');
  });

  it('is none where the others were not looked at', () => {
    const partial = comparison([added('a', 'unknown')], { scope: 'changes', unread: 7 });
    assert.match(setVerdict({ ...partial, unread: 1 }), /the other picture did not change and was not/);
    assert.match(setVerdict(partial), /was not judged: the other 7 pictures did not change .*--whole/);
  });

  it('takes the worst of several targets', () => {
    assert.equal(worst([match('matches'), match('differs')]), 'differs');
    assert.equal(worst([match('matches'), match('unknown')]), 'unknown');
  });
});
