import assert from 'node:assert/strict';
import { verdictOn } from '../../../src/report/compare/verdict';
import type { ChangeKind, FindingChanges } from '../../../src/shared/comparison';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';
import { blank, change, findings, page } from './support';

const warning = finding('tint', 'warning', 'No.');
const error = finding('unreadable', 'error', 'No.');
const note = finding('light-shift', 'note', 'Perhaps.');

const told = (kind: ChangeKind, of: Partial<FindingChanges>) => {
  const { kind: weight, words } = verdictOn(
    change(kind, 'a', [page(picture('a'), picture('a'), { findings: findings(of) })]),
  );
  return `${weight}: ${words}`;
};

describe('the verdict on a changed picture', () => {
  it('goes by the errors and warnings that came and went', () => {
    assert.equal(told('changed', { new: [warning] }), 'worse: Worse than before: 1 new finding');
    assert.equal(told('moved', { ended: [warning, error] }), 'better: Better than before: 2 findings ended');
    assert.equal(
      told('changed', { new: [error], ended: [warning] }),
      'mixed: Otherwise than before: 1 new finding, 1 ended',
    );
    assert.equal(told('renamed', { unchanged: [warning] }), 'same: As before: 1 finding stays');
    assert.equal(told('changed', {}), 'same: As before: no error or warning');
  });

  it('is moved by the note that it is another picture of the book', () => {
    const twice = finding('same-picture', 'note', 'Printed twice.');
    assert.equal(told('changed', { new: [twice] }), 'worse: Worse than before: 1 new finding');
  });

  it('is not moved by other notes', () => {
    assert.equal(
      told('changed', { new: [note], ended: [note, note], unchanged: [note] }),
      'same: As before: no error or warning',
    );
  });

  it('takes for no better what is not said any more because its rule is off', () => {
    const [was, is] = [picture('a'), picture('a')];
    const off = change('changed', 'a', [page(was, is, { findings: findings({ ended: [warning] }) })]);
    assert.equal(verdictOn(off, ['tint']).kind, 'same');
    assert.equal(verdictOn(off, ['other']).kind, 'better');
  });

  it('says of a new picture what stands against it, and of one that is gone just that', () => {
    assert.equal(told('added', { new: [warning, note] }), 'worse: New, with 1 finding against it');
    assert.equal(told('added', { new: [note] }), 'same: New, with no error or warning');
    assert.equal(told('deleted', { ended: [error] }), 'gone: Gone from the book');
    assert.match(told('mode', {}), /^same: .*file mode/);
  });

  it('says of what is placed and not there that its place stays blank, whatever kind of change it is', () => {
    const missing = blank('a');
    for (const kind of ['added', 'deleted'] as const) {
      const { kind: weight, words } = verdictOn(change(kind, 'a', [page(picture('a'), missing)]));
      assert.deepEqual(
        [weight, words],
        ['worse', 'Not there any more, and still placed: its place stays blank'],
      );
    }
    const never = verdictOn(change('added', 'a', [page(null, missing)]));
    assert.equal(never.words, 'Placed and not there: its place stays blank');
  });

  it('says of what cannot be read any more just that, whatever the settings make of it', () => {
    const broken = picture('a', [], brokenFacts('truncated'));
    const on = (kind: 'added' | 'changed', before: Parameters<typeof page>[0]) => {
      const { kind: weight, words } = verdictOn(change(kind, 'a', [page(before, broken)]));
      return `${weight}: ${words}`;
    };
    assert.equal(on('changed', picture('a')), 'worse: Cannot be read any more');
    assert.equal(on('added', null), 'worse: New, and cannot be read');
    assert.match(on('changed', broken), /^same: /, 'it was no better');
  });

  it('counts every page of a file', () => {
    const bad = (number: number) =>
      page(picture('a'), picture('a'), { page: number, findings: findings({ new: [warning] }) });
    assert.match(verdictOn(change('changed', 'a', [bad(1), bad(2)])).words, /2 new findings/);
  });
});
