import type { ProfileFacts } from '../shared/picture';
import { type IccProfile, loadIcc } from './icc';

/** Steps of the grey axis from black to white. */
const STEPS = 32;

/**
 * What a picture's own profile says of itself.
 * @throws Error in plain words where it cannot be used
 */
export async function profileFacts(bytes: Uint8Array): Promise<ProfileFacts> {
  const profile = (await loadIcc()).open(bytes);
  try {
    return factsOfProfile(profile);
  } finally {
    profile.close();
  }
}

/** The same of an opened profile. */
export function factsOfProfile(profile: IccProfile): ProfileFacts {
  return {
    description: profile.description,
    space: profile.space,
    class: profile.class,
    greyAxisChroma: greyAxisChroma(profile),
  };
}

/** Largest C* (relative colorimetry) along the axis of equal values; inks and Lab have no such axis of their own. */
function greyAxisChroma(profile: IccProfile): number | null {
  if (profile.space !== 'grey' && profile.space !== 'rgb') return null;
  const values = Float64Array.from(
    { length: (STEPS + 1) * profile.channels },
    (_, i) => Math.floor(i / profile.channels) / STEPS,
  );
  const lab = profile.transformToLab('relative', values);
  let most = 0;
  for (let i = 0; i < lab.length; i += 3) most = Math.max(most, Math.hypot(lab[i + 1], lab[i + 2]));
  return most;
}
