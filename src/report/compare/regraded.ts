import type { Comparison, FindingChanges } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';

/** A finding that was there before, and is told with another severity now: the settings changed what it counts for. */
export interface Regraded {
  now: Finding;
  was: Finding;
  /** `is an error now, was a warning` */
  words: string;
}

/**
 * Of what is new and what ended on one picture that which is one and the same. `book`: what is new of the whole book, as what
 * is said of several pictures is once it is only a note.
 */
export const regraded = (
  { new: fresh, ended }: Pick<FindingChanges, 'new' | 'ended'>,
  book: readonly Finding[] = [],
): Regraded[] =>
  [...fresh, ...book].flatMap(now => {
    const was = ended.find(each => isRegraded(now, each));
    return was ? [{ now, was, words: `is ${aSeverity(now)} now, was ${aSeverity(was)}` }] : [];
  });

/** A rule may say two things; what it tells along with them tells them apart. */
export const isRegraded = (now: Finding, was: Finding): boolean =>
  now.rule === was.rule &&
  now.severity !== was.severity &&
  now.data.target === was.data.target &&
  toldAlong(now) === toldAlong(was);

const toldAlong = ({ data }: Finding): string => Object.keys(data).sort().join(' ');

export const aSeverity = ({ severity }: Pick<Finding, 'severity'>): string =>
  `${severity === 'error' ? 'an' : 'a'} ${severity}`;

/** What became of one that ended, as it follows its name: ` (a note now)`, ` (its rule is off now)`; '' where it has just ended. */
export function becameOf(
  was: Finding,
  fresh: readonly Finding[],
  { book, settings }: Pick<Comparison, 'book' | 'settings'>,
): string {
  const now = [...fresh, ...book.new].find(each => isRegraded(each, was));
  if (now) return ` (${aSeverity(now)} now)`;
  return settings.off?.includes(was.rule) ? OFF : '';
}

export const OFF = ' (its rule is off now)';
