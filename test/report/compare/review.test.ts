import assert from 'node:assert/strict';
import { reviewedPicture, reviewOf } from '../../../src/report/compare/review';
import { finding, picture } from '../text/support';
import { change, clause, comparison, findings, page } from './support';

const warning = finding('tint', 'warning', 'It is seen.');
const note = finding('light-shift', 'note', 'It may be seen.');
const place = { before: '1.tif', after: '3.tif', beside: ['3.tif'] };

const changed = change(
  'moved',
  '2.tif',
  [page(picture('2.tif'), picture('2.tif'), { findings: findings({ new: [warning], ended: [note] }) })],
  { from: 'old.tif', neighbours: place, faced: place.beside },
);

describe('a comparison for the editor', () => {
  it('lists what changed with its findings counted, and what became of the others', () => {
    const review = reviewOf(
      comparison([changed], {
        others: [{ path: '9.tif', page: 1, findings: findings({ new: [warning] }) }],
        notices: ['A notice.'],
      }),
    );
    assert.deepEqual(review.pictures, [
      {
        path: '2.tif',
        kind: 'moved',
        happened: 'renamed from old.tif, and changed, between 1.tif and 3.tif, on a spread with 3.tif',
        verdict: { kind: 'worse', words: 'Worse than before: 1 new finding' },
        new: 1,
        ended: 1,
      },
    ]);
    assert.deepEqual(review.others, ['9.tif: new tint: It is seen.'], 'with the reason and the way out');
    assert.deepEqual(review.notices, ['A notice.']);
    assert.match(review.compared, /^Before: main \(a{10}\)\. After: /);
  });

  it('says that the settings changed where both sides are forecast for other prints', () => {
    const review = reviewOf(
      comparison([changed], { settings: { changes: [clause('paper: matt, before gloss')], forecasts: [] } }),
    );
    assert.match(review.notices[0], /^The settings changed, .*: paper: matt, before gloss\.$/);
  });

  it('shows one picture by its name now or before', () => {
    const one = comparison([changed]);
    const shown = reviewedPicture(one, '2.tif', null)!;
    assert.deepEqual(reviewedPicture(one, 'old.tif', null), shown);
    assert.equal(reviewedPicture(one, '1.tif', null), null);
    assert.deepEqual([shown.before?.path, shown.after?.path], ['old.tif', '2.tif']);
    assert.deepEqual(
      [shown.findings.new.map(f => f.rule), shown.findings.ended.map(f => f.rule)],
      [['tint'], ['light-shift']],
    );
    assert.deepEqual(shown.neighbours, [
      { path: '1.tif', beside: false },
      { path: '2.tif', beside: false },
      { path: '3.tif', beside: true },
    ]);
  });

  it('lists what the change itself waives', () => {
    const waived = [{ path: 'a.tif', page: 1, finding: { ...warning, reason: 'As agreed' } }];
    const [line] = reviewOf(comparison([], { waived })).notices;
    assert.equal(line, `Waived by this change: a.tif: warning ${warning.rule}, because: As agreed`);
  });

  it('sets facts beside each other line by line', () => {
    const was = picture('a');
    const is = picture('a', [], { encoding: 'black-only' });
    const { facts } = reviewedPicture(comparison([change('changed', 'a', [page(was, is)])]), 'a', 1)!;
    assert.equal(facts[0].label, 'Encoding');
    assert.match(facts[0].before, new RegExp(`\\(${was.facts.encoding}\\)$`));
    assert.match(facts[0].after, /\(black-only\)$/);
    assert.equal(new Set(facts.map(({ label }) => label)).size, facts.length);
  });

  it('has one side alone of what is new or gone', () => {
    const both = comparison([
      change('added', 'new', [page(null, picture('new'))], { neighbours: place }),
      change('deleted', 'gone', [page(picture('gone'), null)], { neighbours: place }),
    ]);
    const added = reviewedPicture(both, 'new', null)!;
    const gone = reviewedPicture(both, 'gone', null)!;
    assert.equal(added.before, null);
    assert.ok(added.facts.every(({ before }) => before === ''));
    assert.ok(gone.facts.every(({ after }) => after === ''));
    assert.equal(gone.after, null);
    assert.deepEqual(gone.neighbours, []);
    const columns = (side: 'before' | 'after', of: typeof added) =>
      new Set(of.forecasts.flatMap(({ rows }) => rows.map(row => row[side])));
    assert.deepEqual([...columns('before', added)], ['not in the book']);
    assert.deepEqual([...columns('after', gone)], ['not in the book any more']);
    assert.ok(columns('after', added).size > 1);
  });

  it('shows the page that is asked for, and the first where there is none of that number', () => {
    const pages = [1, 2].map(number => page(picture('a'), picture('a'), { page: number }));
    const two = comparison([change('changed', 'a', pages)]);
    assert.equal(reviewedPicture(two, 'a', 2)?.page, 2);
    assert.equal(reviewedPicture(two, 'a', 7)?.page, 1);
    assert.deepEqual(reviewedPicture(two, 'a', null)?.pages, [1, 2]);
  });

  it('has nothing to show where only the file mode changed', () => {
    const mode = reviewedPicture(comparison([change('mode', 'a', [])]), 'a', null)!;
    assert.deepEqual([mode.before, mode.after, mode.facts, mode.pages], [null, null, [], []]);
  });
});
