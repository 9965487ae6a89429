import { srgbToLab } from '../colour/srgb';
import type { PictureFacts } from '../shared/picture';
import { fittingProfile } from './profiles';

/** A tone that covers less of a picture (0-1) than this says nothing of how light it looks. Own choice. */
const COVERS = 0.02;

/**
 * By how much (L*) a grey picture prints lighter, or darker where negative, if its profile is not read and its numbers are
 * taken for sRGB: that of the tone that moves most. 0 where it carries none, and of inks.
 */
export function shiftUnread(facts: PictureFacts): number {
  if (!fittingProfile(facts) || (facts.space !== 'grey' && facts.space !== 'rgb')) return 0;
  const lab = new Float64Array(3);
  const shifts = facts.zones
    .filter(({ weight }) => weight >= COVERS)
    .flatMap(({ L, clusters }) =>
      clusters.slice(0, 1).map(({ mean: [r, g = r, b = r] }) => srgbToLab([r, g, b], lab)[0] - L),
    );
  return shifts.reduce((most, shift) => (Math.abs(shift) > Math.abs(most) ? shift : most), 0);
}
