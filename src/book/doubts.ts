import { paperProblem, routeProblem } from '../print';
import type { Slip } from '../shared/finding';
import type { Target } from '../shared/target';
import type { Settings } from './settings/settings';
import { placesIn } from './settings/written-at';

/** What the settings ask of a target and cannot have: a paper, or a route, that there is not for its process. */
export function doubtsOf(target: Target): string[] {
  return [paperProblem(target.process, target.paper), routeProblem(target)].filter(doubt => doubt !== null);
}

/** The same as sentences of a target whose name is known. */
export const doubtSentences = (target: Target): string[] => doubtsOf(target).map(sentence);

const sentence = (doubt: string): string => `${doubt[0].toUpperCase()}${doubt.slice(1)}.`;

/** A doubtful paper at its word in the settings, where it stands there. */
export function doubtfulPapers({ targets, written }: Pick<Settings, 'targets' | 'written'>): Slip[] {
  if (!written) return [];
  const places = placesIn(written);
  return targets.flatMap(({ name, process, paper }) => {
    const doubt = paperProblem(process, paper);
    if (doubt === null || typeof paper !== 'string') return [];
    const [at] = [...places(['targets', name, 'paper'], paper), ...places(['paper'], paper)];
    return at ? { ...at, message: sentence(doubt) } : [];
  });
}

/** The same as sentences of their own, apart from the target's other conditions. */
export const doubtNotices = (target: Target): string[] =>
  doubtsOf(target).map(doubt => `The target "${target.name}": ${doubt}.`);
