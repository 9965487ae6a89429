import { fittingProfile, profileName } from '../rules/profiles';
import { list } from '../rules/words';
import type { RemedyWish } from '../shared/remedy';
import { greyDescription } from './encode/profiles';
import type { Decision } from './plan/types';

/**
 * That pictures which were right already lie beside the results in another profile than theirs, as a check would tell;
 * null where none does. A grey profile that was named has every picture converted.
 */
export function otherProfilesNotice(decisions: readonly Decision[], { to }: RemedyWish): string | null {
  if (to === 'black-only' || !decisions.some(({ do: what }) => what === 'convert')) return null;
  const own = to === 'single-channel' ? greyDescription : 'sRGB';
  const others = decisions.flatMap(({ do: what, asked: { pages } }) => {
    const [facts] = pages;
    const name = fittingProfile(facts) && profileName(facts);
    return what === 'copy' && facts.encoding === to && name !== null && name !== own ? [name] : [];
  });
  if (!others.length) return null;
  const way =
    to === 'single-channel'
      ? 'name the profile for all with "--profile"'
      : 'export these again in sRGB from where they come';
  const [are, they] = others.length === 1 ? ['picture was', 'it'] : ['pictures were', 'they'];
  return `${others.length} ${are} copied in the profile that ${they} had (${list([...new Set(others)])}), and the results carry ${own}. A check tells that as mixed profiles; to have one in all, ${way}.`;
}
