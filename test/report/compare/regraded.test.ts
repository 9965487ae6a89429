import assert from 'node:assert/strict';
import { becameOf, regraded } from '../../../src/report/compare/regraded';
import type { Finding } from '../../../src/shared/finding';
import { comparison, findings } from './support';

const finding = (severity: Finding['severity'], rule = 'mixed-encodings', target?: string): Finding => ({
  rule,
  severity,
  message: '',
  data: { ...(target && { target }) },
});

describe('a finding that counts for more or less than before', () => {
  it('is one of the same rule and target, with both severities in words', () => {
    const [now, was] = [finding('error'), finding('warning')];
    assert.deepEqual(regraded({ new: [now], ended: [was] }), [
      { now, was, words: 'is an error now, was a warning' },
    ]);
    assert.equal(regraded({ new: [was], ended: [now] })[0].words, 'is a warning now, was an error');
  });

  it('is none of another rule or on another target, nor what is new or ended alone', () => {
    assert.deepEqual(regraded({ new: [finding('error')], ended: [finding('warning', 'untagged')] }), []);
    assert.deepEqual(
      regraded({
        new: [finding('error', 'odd-one-out', 'a')],
        ended: [finding('warning', 'odd-one-out', 'b')],
      }),
      [],
    );
    assert.deepEqual(regraded({ new: [finding('error')], ended: [] }), []);
    assert.deepEqual(
      regraded({ new: [finding('error')], ended: [finding('error')] }),
      [],
      'counts as before',
    );
  });

  it('is none where the rule says another thing, such as a note on the process in place of one on the file', () => {
    const was = { ...finding('warning'), data: { save: 'black-only' } };
    assert.deepEqual(regraded({ new: [finding('note')], ended: [was] }), []);
  });

  it('may be a note of the whole book now, and is told beside the name of what ended', () => {
    const [now, was] = [finding('note'), finding('warning')];
    const of = (book: Finding[], off: string[]) =>
      comparison([], { book: findings({ new: book }), settings: { changes: [], forecasts: [], off } });
    assert.equal(becameOf(was, [], of([now], [])), ' (a note now)');
    assert.equal(becameOf(was, [finding('error')], of([], [])), ' (an error now)');
    assert.equal(becameOf(was, [], of([], [was.rule])), ' (its rule is off now)');
    assert.equal(becameOf(was, [], of([], ['untagged'])), '');
    assert.equal(regraded({ new: [], ended: [was] }, [now])[0].words, 'is a note now, was a warning');
  });
});
