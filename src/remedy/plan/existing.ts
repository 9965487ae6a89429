import type { Remedied, RemedyWish } from '../../shared/remedy';
import type { Asked, Copy, Place } from './types';
import { wishKey } from './wish-key';

/** What there is under the name of a result. */
export type Existing =
  | { kind: 'nothing' }
  /** A folder, a link, a pipe. */
  | { kind: 'no-file' }
  /** `made`: what this program remembers of writing these very bytes; null: nothing. */
  | { kind: 'file'; sha256: string; made: Made | null };

interface Made {
  from: string;
  source: string;
  wish: string;
  /** SHA-256 of what it was written over. */
  replaces?: string | null;
}

export type Verdict =
  | { do: 'write' }
  /** Ours, untouched, and not what is wanted now. */
  | { do: 'replace'; sha256: string; told: string }
  | { do: 'skip' | 'refuse'; reason: string };

/**
 * Whether a result may be written under its name. Only what this program wrote from this very picture, and nobody has
 * touched since, is ever replaced.
 * @param remedied what the existing file's own record says; asked for only where nothing is remembered
 */
export function besides(
  { file, pages }: Asked,
  { shown }: Copy,
  wish: RemedyWish,
  place: Pick<Place, 'kind'>,
  existing: Existing,
  remedied: Remedied | null,
): Verdict {
  const name = `"${shown}"`;
  const { sha256 } = pages[0];
  if (existing.kind === 'nothing') return { do: 'write' };
  if (existing.kind === 'no-file')
    return { do: 'refuse', reason: `${name} is there already and is no file. Move it away.` };
  const { made } = existing;
  if (made?.from === sha256 && made.wish === wishKey(wish))
    return { do: 'skip', reason: 'It was converted so before.' };
  if (made?.source === file)
    return {
      do: 'replace',
      sha256: existing.sha256,
      told:
        made.from === sha256
          ? 'Replaces the earlier result, which was converted in another way.'
          : 'Replaces the earlier result, which was made before the picture was changed.',
    };
  const isFitted = wish.curve !== null;
  if (remedied?.from === sha256 && remedied.to === wish.to && remedied.fitted !== isFitted)
    return {
      do: 'skip',
      reason: `It was converted before, in another way: its tones were ${isFitted ? 'not fitted' : 'fitted'}. Delete the result to have it made anew.`,
    };
  if (remedied?.from === sha256 && remedied.to === wish.to)
    return {
      do: 'skip',
      reason: 'It was converted before. If that was in another way, delete the result to have it made anew.',
    };
  return {
    do: 'refuse',
    reason: remedied
      ? `${name} is there already, the result of another picture or of an earlier state of this one, and somebody may have worked on it. It was not written over: delete or rename it.`
      : `${name} is there already and is no result of this picture. It was not written over: ${place.kind === 'folder' ? 'move it away or name another folder' : 'rename it, or have the results written into a folder'}.`,
  };
}
