import assert from 'node:assert/strict';
import { regraded } from '../../../src/book/comparison/regrade';
import type { JudgedBook } from '../../../src/book/judge-book';
import type { Settings } from '../../../src/book/settings/settings';
import type { Finding } from '../../../src/shared/finding';

type Rules = Settings['rules'];

const finding = (severity: Finding['severity'], data = {}, rule = 'clipped'): Finding => ({
  ...{ rule, severity, data },
  message: '',
});
const book = (...findings: Finding[]) =>
  ({ pictures: [{ path: 'a', findings }], findings: [] }) as unknown as JudgedBook;
const severities = (before: Finding[], was: Rules, is: Rules, after: Finding[] = []) => {
  const { before: now } = regraded(book(...before), book(...after), { was, is });
  return now.pictures[0].findings.map(({ severity }) => severity);
};

describe('findings before, by what their rules count for since', () => {
  it('count for more or less, and what they were is known', () => {
    const one = finding('warning');
    const rules = { was: { clipped: 'warning' }, is: { clipped: 'error' } } as const;
    const { before, was } = regraded(book(one), book(), rules);
    const [now] = before.pictures[0].findings;
    assert.deepEqual([now.severity, was.get(now)], ['error', one]);
    assert.deepEqual(severities([one], { clipped: ['warning', {}] }, { clipped: 'note' }), ['note']);
    assert.deepEqual(severities([finding('error')], { clipped: 'error' }, {}), ['note'], 'as it says itself');
  });

  it('are of a target as it is called now', () => {
    const one = finding('warning', { target: 'edition' });
    const { before, was } = regraded(book(one), book(), { was: {}, is: {} }, new Map([['edition', 'print']]));
    const [now] = before.pictures[0].findings;
    assert.deepEqual([now.data.target, now.severity, was.get(now)], ['print', 'warning', one]);
  });

  it('stay as they were where the rule does, or is off', () => {
    const one = finding('warning');
    assert.deepEqual(severities([one], { clipped: 'warning' }, { clipped: ['warning', { share: 1 }] }), [
      'warning',
    ]);
    assert.deepEqual(severities([one], { clipped: 'warning' }, { clipped: 'off' }), ['warning']);
    assert.deepEqual(severities([finding('note', {}, 'other')], {}, { clipped: 'error' }), ['note']);
  });

  it('stay notes where that is all that the rule makes of them, whatever it is set to', () => {
    const [noted, own] = [finding('note', { shares: 1 }), finding('note', { save: 1 })];
    assert.deepEqual(severities([noted], { clipped: 'warning' }, { clipped: 'error' }), ['note']);
    const raised = [{ clipped: 'note' }, { clipped: 'error' }] as const;
    assert.deepEqual(severities([noted, own], ...raised, [finding('note', { shares: 2 })]), [
      'note',
      'error',
    ]);
  });
});
