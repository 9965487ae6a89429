import type { PressProfile } from '../../shared/target';
import type { BlackGeneration, NeutralAxis } from '../inks/separation';
import type { PrintModel } from '../model';

/** The one black generation of a house whose profile is known. */
export const profileGeneration: BlackGeneration = {
  id: 'profile',
  label: "by the print house's profile",
  weight: 1,
  black: alone => alone,
};

/**
 * The neutral axis as a CMYK profile itself separates it, its own ink limit and black included; the model says how
 * light each step prints. Null where the profile works one way only.
 */
export function profileAxis(profile: PressProfile, model: PrintModel): NeutralAxis | null {
  if (!profile.greys || profile.space !== 'cmyk') return null;
  const lab = new Float64Array(3);
  const L: number[] = [];
  const inks: number[] = [];
  for (let at = 0; at < profile.greys.length; at += 4) {
    const step = profile.greys.subarray(at, at + 4);
    model.lab(step, null, lab);
    // below its black a profile repeats its darkest grey
    if (L.length > 0 && lab[0] > L[L.length - 1] - 0.05) continue;
    L.push(lab[0]);
    inks.push(...step);
  }
  if (L.length < 2) return null;
  return { L: Float64Array.from(L), inks: Float64Array.from(inks), black: L[L.length - 1] };
}
