import assert from 'node:assert/strict';
import { setVerdict, worst } from '../../../src/report/compare/set';
import type { FindingChanges, Match } from '../../../src/shared/comparison';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';
import { change, clause, comparison, findings, page } from './support';

const matchOf = (verdict: Match['verdict'], more: Partial<Match> = {}): Match => ({
  ...{ target: 'book', verdict, rules: [], waived: false, distance: 0, probability: 0 },
  ...more,
});
const added = (path: string, verdict: Match['verdict'], more: Partial<Match> = {}) =>
  change('added', path, [page(null, picture(path), { matches: [matchOf(verdict, more)] })]);
const verdict = (...changes: ReturnType<typeof added>[]) => setVerdict(comparison(changes));

describe('the verdict on the set', () => {
  it('names what matches and what does not, each with what it is to match', () => {
    assert.equal(verdict(added('a', 'matches')), 'a matches the rest of the book.');
    assert.equal(verdict(added('a', 'matches'), added('b', 'matches')), 'All 2 match the rest of the book.');
    assert.equal(
      verdict(added('a', 'matches'), added('b', 'differs')),
      'b does not match the rest of the book. a matches the rest of the book.',
    );
    assert.match(verdict(added('a', 'ahead')), /^a is stored as all are to be, and others are not yet\.$/);
    assert.equal(
      verdict(added('a', 'along'), added('b', 'along')),
      'a and b are stored like most of the others, and to be converted with them.',
    );
    assert.match(verdict(added('a', 'alone')), /^a has no others of the same part and intent to match\.$/);
    assert.equal(setVerdict(comparison([change('deleted', 'a', [page(picture('a'), null)])])), '');
  });

  it('tells what others are to be saved as now, with the target where there are several', () => {
    const advice = [{ target: 'book', before: 'black-only', after: 'rgb-neutral', pictures: ['p', 'q'] }];
    const one = comparison([added('a', 'matches')], { advice });
    const words = (on = '') =>
      `a matches the rest of the book. The advice for p and q, unchanged themselves, is another now${on}: save them as rgb-neutral; before, as black-only.`;
    assert.equal(setVerdict(one), words());
    const [target] = one.head.targets;
    const head = { ...one.head, targets: [target, { ...target, name: 'other' }] };
    assert.equal(setVerdict({ ...one, head }), words(' (book)'));
  });

  it('says how a picture stands out that most of the others are stored unlike', () => {
    const apart = (path: string) =>
      added(path, 'differs', { stored: { as: 'rgb-neutral', others: 'single-channel' } });
    assert.equal(
      verdict(apart('a'), apart('b'), added('c', 'differs')),
      'a and b do not match the rest of the book: they are stored as rgb-neutral, and most of the others as single-channel. c does not match the rest of the book.',
    );
  });

  it('calls nothing a match that the print house refuses, though the others are stored like it', () => {
    const refused = { new: [finding('encoding-not-accepted', 'error', '')], ended: [], unchanged: [] };
    const told = page(null, picture('a'), { matches: [matchOf('matches')], findings: refused });
    assert.equal(
      verdict(change('added', 'a', [told]), added('b', 'matches')),
      'b matches the rest of the book. a is stored like the rest of the book, and the print house may refuse that.',
    );
  });

  it('says of what is waived that it does not match all the same', () => {
    const waived = added('b', 'differs', { rules: ['mixed-encodings'], waived: true });
    assert.equal(
      verdict(added('a', 'differs'), waived),
      'a does not match the rest of the book. b does not match the rest of the book; the finding that says so is waived.',
    );
  });

  it('says why nothing is forecast, and the way out', () => {
    const unknown = (
      reason: 'missing' | 'not-fetched' | 'truncated' | null,
      targets = picture('a').targets,
    ) => {
      const after = {
        ...picture('a', [], reason ? { unreadable: { reason, text: 'No.' } } : {}),
        placedAt: [{ file: 'book.md', line: 1, column: 1 }],
      };
      return change('added', 'a', [
        page(
          null,
          { ...after, targets },
          { matches: [matchOf('unknown', { distance: null, probability: null })] },
        ),
      ]);
    };
    assert.match(
      verdict(unknown('not-fetched')),
      /^a was not fetched, .*: run "git lfs fetch --all" and compare again \("git lfs pull" fetches no more than what is checked out, .*\)\.$/,
    );
    assert.equal(
      setVerdict(comparison([unknown('missing')], { scope: 'changes', unread: 3 })),
      'a is placed by a layout and not there, so its place stays blank: put it back, or have the layout place what took its place.',
    );
    assert.match(verdict(unknown('truncated')), /^a cannot be read, .* export it again\.$/);
    assert.match(verdict(unknown(null, [])), /^Nobody said where .* whether a will .* name a "process"/);
    assert.match(verdict(unknown(null)), /^Of a nothing can be forecast/);
  });

  it('says of unchanged pictures that they match no more', () => {
    const odd = findings({ new: [finding('mixed-encodings', 'error', '')] });
    const told = comparison([added('a', 'matches')], { others: [{ path: 'c', page: 1, findings: odd }] });
    assert.match(
      setVerdict(told),
      /book\. c, unchanged itself, does not match the rest of the book any more\.$/,
    );
    const withMost = { ...finding('mixed-encodings', 'error', ''), data: { odd: ['d'] } };
    const others = ['c', 'd'].map(path => ({ path, page: 1, findings: findings({ new: [withMost] }) }));
    assert.equal(
      setVerdict(comparison([], { others })).replace(/, unch.*/, ''),
      'd',
      'c is stored like most, and to be converted with them',
    );
    for (const rule of ['low-resolution', 'same-picture']) {
      const other = findings({ new: [finding(rule, 'error', '')] });
      assert.equal(
        setVerdict(comparison([], { others: [{ path: 'c', page: 1, findings: other }] })),
        '',
        rule,
      );
    }
  });

  it('says of unchanged pictures whether they did not match before either', () => {
    const was = finding('mixed-encodings', 'warning', '');
    const is = finding('mixed-encodings', 'error', '');
    const settings = {
      changes: [clause('rule mixed-encodings: error, before as by default')],
      forecasts: [],
    };
    const told = (of: Partial<FindingChanges>, changes: ReturnType<typeof added>[] = []) =>
      setVerdict(comparison(changes, { settings, others: [{ path: 'c', page: 1, findings: findings(of) }] }));
    assert.match(told({ new: [is], ended: [] }), /the book by the settings as they are now\.$/);
    assert.match(told({ new: [is] }, [added('a', 'matches')]), / c, .* the rest of the book as it is now\.$/);
    const other = told({ new: [finding('odd-one-out', 'warning', '')], unchanged: [was] });
    assert.equal(
      other,
      'c, unchanged itself, does not match the rest of the book, as before; new is that odd-one-out says so.',
      'it is not by the settings',
    );
  });

  it('begins with what cannot be read, and passes over nothing else that is new against what matches', () => {
    const broken = added('a', 'unknown', { distance: null, probability: null });
    broken.pages[0].after = picture('a', [], brokenFacts('truncated'));
    const soft = added('b', 'matches');
    soft.pages[0].findings = findings({ new: [finding('low-resolution', 'warning', '')] });
    assert.match(
      verdict(soft, added('c', 'matches'), broken, added('d', 'differs')),
      /^a cannot be read, .* d does not match the rest of the book\. b matches the rest of the book, and something else is new against it: low-resolution\. c matches the rest of the book\.$/,
    );
  });

  it('says of a changed picture that it did not match before either', () => {
    const old = finding('mixed-encodings', 'warning', '');
    const told = (which: 'new' | 'unchanged') =>
      setVerdict(
        comparison([
          change('changed', 'a', [
            page(picture('a'), picture('a'), {
              findings: { new: [], ended: [], unchanged: [], [which]: [old] },
              matches: [matchOf('differs', { rules: ['mixed-encodings'] })],
            }),
          ]),
        ]),
      );
    assert.equal(told('unchanged'), 'a does not match the rest of the book, as before.');
    assert.equal(told('new'), 'a does not match the rest of the book.');
  });

  it('leaves open what is likely to be seen and no rule speaks of', () => {
    assert.match(
      verdict(added('a', 'unknown', { distance: 3, probability: 0.8 })),
      /^Whether a matches the rest of the book stays open: .* no rule denies .* test print\.$/,
    );
  });

  it('is none where the others were not looked at', () => {
    const partial = comparison([added('a', 'unknown')], { scope: 'changes', unread: 7 });
    assert.match(setVerdict({ ...partial, unread: 1 }), /the other picture did not change and was not/);
    assert.match(setVerdict(partial), /was not judged: the other 7 pictures did not change .*--whole/);
  });

  it('takes the worst of several targets', () => {
    assert.equal(worst([matchOf('matches'), matchOf('differs')]), 'differs');
    assert.equal(worst([matchOf('matches'), matchOf('unknown')]), 'unknown');
  });
});
