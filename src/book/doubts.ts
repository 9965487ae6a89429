import { paperProblem, routeProblem } from '../print';
import type { Target } from '../shared/target';

/** What the settings ask of a target and cannot have: a paper, or a route, that there is not for its process. */
export function doubtsOf(target: Target): string[] {
  return [paperProblem(target.process, target.paper), routeProblem(target)].filter(doubt => doubt !== null);
}

/** The same as sentences of their own, apart from the target's other conditions. */
export const doubtNotices = (target: Target): string[] =>
  doubtsOf(target).map(doubt => `The target "${target.name}": ${doubt}.`);
