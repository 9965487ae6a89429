import assert from 'node:assert/strict';
import { countsOf, tally } from '../../../src/book/comparison/tally';
import type { JudgedBook } from '../../../src/book/judge-book';
import type { Finding } from '../../../src/shared/finding';

const finding = (rule: string, severity: Finding['severity'], pictures: string[] = []): Finding => ({
  ...{ rule, severity, message: rule },
  data: pictures.length ? { pictures } : {},
});
const book = (own: Record<string, Finding[]>, findings: Finding[] = []) =>
  ({
    pictures: Object.entries(own).map(([path, some]) => ({ path, findings: some })),
    findings,
  }) as unknown as JudgedBook;

/** `otherwise`: what the settings have count for more or less since. */
const how = (told: Parameters<typeof tally>[2]['told'], said: Finding[], otherwise: Finding[] = []) => ({
  ...{ told, said },
  isRegraded: (before: Finding) => otherwise.includes(before),
});
const NONE = { errors: 0, warnings: 0, notes: 0 };

describe('findings counted before and after', () => {
  it('count once each, of how many pictures they may be said', () => {
    const shared = finding('mixed', 'error', ['a', 'b', 'c']);
    const own = finding('own', 'warning');
    const after = book({ a: [], b: [own], c: [] }, [shared]);
    const told = [
      { new: [shared], ended: [] },
      { new: [shared, own], ended: [] },
      { new: [], ended: [] },
    ];
    assert.deepEqual(tally(book({ a: [], b: [], c: [] }), after, how(told, [])), {
      new: { ...NONE, errors: 1, warnings: 1 },
      ended: NONE,
      unchanged: NONE,
      regraded: 0,
    });
  });

  it('stay where nobody tells anything new of them', () => {
    const stays = finding('stays', 'note');
    assert.deepEqual(tally(book({ a: [] }, [stays]), book({ a: [] }, [stays]), how([], [stays])).unchanged, {
      ...NONE,
      notes: 1,
    });
  });

  it('about several pictures have ended once they have for all of them', () => {
    const shared = finding('mixed', 'error', ['a', 'b']);
    const before = book({ a: [], b: [] }, [shared]);
    const after = book({ a: [], b: [] });
    const one = { new: [], ended: [shared] };
    assert.deepEqual(tally(before, after, how([one], [shared, shared])).ended, NONE);
    assert.deepEqual(countsOf(before), { ...NONE, errors: 1 }, 'as a check counts it');
    assert.deepEqual(tally(before, after, how([one, one], [shared, shared])).ended, { ...NONE, errors: 1 });
  });

  it('are told apart where the settings alone changed what they count for, unless they ended', () => {
    const [stays, goes] = [finding('stays', 'warning'), finding('goes', 'warning')];
    const before = book({ a: [stays, goes] });
    const after = book({ a: [finding('stays', 'note')] });
    const ended = how([{ new: [], ended: [goes] }], [stays, goes], [stays, goes]);
    const counted = tally(before, after, ended);
    assert.deepEqual([counted.ended.warnings, counted.unchanged.notes, counted.regraded], [1, 1, 1]);
  });
});
