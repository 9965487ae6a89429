import assert from 'node:assert/strict';
import { regraded } from '../../../src/report/compare/regraded';
import type { Finding } from '../../../src/shared/finding';

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
  });
});
