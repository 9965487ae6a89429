import type { PressProfile } from '../../shared/target';
import type { Paper } from '../papers';
import { paperOf } from './read';

/** No paper is so white: the profile was made relative to its paper and does not say which it is. */
const PERFECT = 99;
/** The house's paper against the one that was measured for the profile: one batch and the next (own choice). */
const SPREAD = { a: 0.3, b: 0.6 };

/**
 * The paper that a print by the profile is on: the user's own measurement first, then the profile's, then the target's.
 */
export function profilePaper(profile: PressProfile, target: Paper): Paper {
  const white = new Float64Array(3);
  profile.lab(paperOf(profile.space), white);
  if (target.id === 'measured' || white[0] > PERFECT) return target;
  return {
    ...target,
    white: [white[0], white[1], white[2]],
    spread: SPREAD,
    ground: "the print house's profile",
  };
}
