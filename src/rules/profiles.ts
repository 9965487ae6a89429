import type { PictureFacts, ProfileFacts, Space } from '../shared/picture';

/** Spaces by name, as a sentence uses them before "pictures". */
export const spaceName: Record<Space, string> = { grey: 'grey', rgb: 'RGB', cmyk: 'CMYK', lab: 'Lab' };

/** The picture's profile, where it is one for its kind of channels: what any other says is read here so and there so. */
export const fittingProfile = ({ profile, space }: PictureFacts): ProfileFacts | null =>
  profile?.space === space ? profile : null;

/** Whether the file leaves open what its numbers mean. Lab says it by itself. */
export const untagged = (facts: PictureFacts): boolean =>
  facts.profile === null && facts.space !== null && facts.space !== 'lab';

/**
 * Name by which profiles are told apart. Descriptions of sRGB differ from program to program and mean the same
 * numbers; RGB without a profile, or with one for other channels, is taken for it nearly everywhere (common practice, no source).
 */
export function profileName(facts: PictureFacts): string | null {
  const { space } = facts;
  const profile = fittingProfile(facts);
  if (!profile) return space === 'rgb' ? 'sRGB' : null;
  const description = profile.description.trim();
  if (profile.space === 'rgb' && /\bsrgb\b/i.test(description)) return 'sRGB';
  return description || 'a profile without a name';
}
