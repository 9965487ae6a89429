import type { FindingChanges, SeverityCounts } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import type { Became } from './became';

export interface Tally extends Record<keyof FindingChanges, SeverityCounts> {
  regraded: number;
}

/**
 * Counts every finding once, as a check of either side does, of how many pictures it may be said: so that what is new and
 * what stayed come to what a check of the head counts. One about several pictures is new where it is new for one of them,
 * and has ended where it has for all; so what ended and stayed need not come to what a check of the base counts.
 * @param how.told what became of what is said of every picture, and of the book
 * @param how.said what was said before, as often as of a picture, or once of the book
 */
export function tally(
  before: JudgedBook,
  after: JudgedBook,
  how: { told: readonly Pick<FindingChanges, 'new' | 'ended'>[] } & Pick<Became, 'said' | 'isRegraded'>,
): Tally {
  const { told, isRegraded } = how;
  const fresh = newIn(told);
  const ended = timesOf(told.flatMap(changes => changes.ended));
  const said = timesOf(how.said);
  const now = allOf(after);
  const was = allOf(before);
  const isEnded = (finding: Finding) => ended.get(finding) === said.get(finding);
  return {
    new: counted(now.filter(finding => fresh.has(finding))),
    ended: counted(was.filter(isEnded)),
    unchanged: counted(now.filter(finding => !fresh.has(finding))),
    regraded: was.filter(finding => isRegraded(finding) && !isEnded(finding)).length,
  };
}

/** What is new for any of those that it is said of. */
export const newIn = (told: readonly Pick<FindingChanges, 'new'>[]): ReadonlySet<Finding> =>
  new Set(told.flatMap(changes => changes.new));

/** As a check counts them. */
export const countsOf = (judged: JudgedBook): SeverityCounts => counted(allOf(judged));

const allOf = ({ pictures, findings }: JudgedBook): Finding[] => [
  ...pictures.flatMap(picture => picture.findings),
  ...findings,
];

function timesOf(findings: readonly Finding[]): Map<Finding, number> {
  const times = new Map<Finding, number>();
  for (const finding of findings) times.set(finding, (times.get(finding) ?? 0) + 1);
  return times;
}

function counted(findings: readonly Finding[]): SeverityCounts {
  const count = (severity: Finding['severity']) => findings.filter(f => f.severity === severity).length;
  return { errors: count('error'), warnings: count('warning'), notes: count('note') };
}
