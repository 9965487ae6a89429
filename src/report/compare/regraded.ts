import type { Finding } from '../../shared/finding';

/** A finding that was there before, and is told with another severity now: the settings changed what it counts for. */
export interface Regraded {
  now: Finding;
  was: Finding;
  /** `is an error now, was a warning` */
  words: string;
}

/** Of what is new and what ended on one picture that which is one and the same. */
export const regraded = ({ new: fresh, ended }: { new: Finding[]; ended: Finding[] }): Regraded[] =>
  fresh.flatMap(now => {
    const was = ended.find(({ rule, data }) => rule === now.rule && data.target === now.data.target);
    return was ? [{ now, was, words: `is ${aSeverity(now)} now, was ${aSeverity(was)}` }] : [];
  });

export const aSeverity = ({ severity }: Pick<Finding, 'severity'>): string =>
  `${severity === 'error' ? 'an' : 'a'} ${severity}`;
