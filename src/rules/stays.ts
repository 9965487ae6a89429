// no-unit-test: test/rules/untagged and test/rules/mixed-profiles judge pictures by it
import type { BookPicture } from '../shared/finding';
import type { Target } from '../shared/target';
import { takes } from './accepted';
import { kindOf, type Recommend } from './recommended';

/** Whether some target takes a picture as it is (else `encoding-not-accepted` speaks). */
export const isTaken = (picture: BookPicture): boolean =>
  !picture.targets.length || picture.targets.some(target => takes(target, picture));

/**
 * Whether a picture is printed as it is stored, on some target at least. What is to become another file, by what all rules
 * name for it, gets a profile of its own then: what is said of the profile that it has would be said of a file that goes.
 */
export function stays(picture: BookPicture, recommend: Recommend): boolean {
  const isBest = (target: Target | null) => {
    const best = picture.intent === 'grey' ? recommend(picture, target) : null;
    return !best || best.unsure || best.encoding === kindOf(picture);
  };
  const { targets } = picture;
  if (!targets.length) return isBest(null);
  return targets.some(target => takes(target, picture) && isBest(target));
}
