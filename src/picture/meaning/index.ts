import { createHash } from 'node:crypto';
import { type IccProfile, loadIcc } from '../../colour/icc';
import { factsOfProfile } from '../../colour/profile-facts';
import type { ProfileFacts } from '../../shared/picture';
import type { Header } from '../types';
import { profiled } from './profiled';
import type { Meaning, Reading } from './types';
import { untagged } from './untagged';

/** A book's pictures share a few profiles; tables of the last ones are kept. */
const KEPT = 8;

type Known = { profile: ProfileFacts; meaning: Meaning | null } | { broken: string };
const known = new Map<string, Known>();

/** What the numbers of a picture mean: by its own profile, else by what is usual for its kind. */
export async function readingOf(header: Pick<Header, 'space' | 'gamma' | 'icc'>): Promise<Reading> {
  const { icc, space } = header;
  const fallback = () => ({ profile: null, remarks: [], ...untagged(header) });
  if (!icc) return fallback();
  const found = await recall(icc, space);
  if ('broken' in found)
    return {
      ...fallback(),
      remarks: [
        {
          code: 'bad-profile',
          text: `The embedded profile cannot be used: ${found.broken}. The picture was read as if it had none.`,
        },
      ],
    };
  const { profile, meaning } = found;
  if (!meaning)
    return {
      ...fallback(),
      profile,
      remarks: [
        {
          code: 'bad-profile',
          text: `The embedded profile ("${profile.description}") is for ${NAMES[profile.space]}, but the picture is ${NAMES[space]}: it was read as if it had none.`,
        },
      ],
    };
  const assumed =
    space === 'grey' && profile.space === 'rgb'
      ? `The profile is for RGB, but the picture is grey: it was read as equal red, green and blue of that profile.`
      : null;
  return { meaning, profile, assumed, remarks: [] };
}

const NAMES = { grey: 'grey', rgb: 'RGB', cmyk: 'CMYK', lab: 'Lab' } as const;

async function recall(icc: Uint8Array, space: Header['space']): Promise<Known> {
  const key = `${space} ${createHash('sha1').update(icc).digest('base64')}`;
  let entry = known.get(key);
  if (!entry) {
    entry = await study(icc, space);
    if (known.size >= KEPT) known.delete(known.keys().next().value!);
  }
  // the last used is the last to go
  known.delete(key);
  known.set(key, entry);
  return entry;
}

async function study(icc: Uint8Array, space: Header['space']): Promise<Known> {
  let profile: IccProfile | null = null;
  try {
    profile = (await loadIcc()).open(icc);
    return { profile: factsOfProfile(profile), meaning: usable(profile, space) };
  } catch (error) {
    return { broken: error instanceof Error ? error.message : String(error) };
  } finally {
    profile?.close();
  }
}

function usable(profile: IccProfile, space: Header['space']): Meaning | null {
  if (space === 'lab') return untagged({ space }).meaning;
  if (profile.space === space || (space === 'grey' && profile.space === 'rgb'))
    return profiled(profile, space);
  return null;
}
