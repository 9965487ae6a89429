import fs from 'node:fs/promises';
import path from 'node:path';
import { hashOf } from '../book/hash';
import { Results } from './results';
import { troubleOf } from './trouble';

/** What became of a result (absolute path) that was to go; `reason`: why it stays, null where it is gone. */
export interface Unmade {
  file: string;
  reason: string | null;
}

/**
 * Takes away results that conversions wrote beside their pictures. Nothing is lost by it: a file goes only where it
 * still is what was written, to the byte, its picture what it was made of, and nothing has a use for it. One that is
 * gone already is passed over.
 * @param memory the user's cache folder, which knows what was written
 * @param neededBy why a result is to stay, such as a line that places it; null: nothing needs it
 */
export async function unmake(
  memory: string,
  files: readonly string[],
  neededBy: (file: string) => Promise<string | null>,
): Promise<Unmade[]> {
  const results = new Results(memory);
  const unmade: Unmade[] = [];
  for (const file of files) {
    const existing = await results.at(file);
    if (existing.kind === 'nothing') continue;
    const stays = (reason: string) => unmade.push({ file, reason });
    const needed = await neededBy(file);
    if (needed) stays(needed);
    else if (existing.kind !== 'file' || !existing.made) stays(CHANGED);
    else if ((await hashOf(existing.made.source).catch(() => null)) !== existing.made.from) stays(SOURCE);
    else if (existing.made.replaces) stays(REPLACED);
    else
      try {
        await fs.unlink(file);
        unmade.push({ file, reason: null });
      } catch (error) {
        stays(troubleOf(error, path.dirname(file)));
      }
  }
  return unmade;
}

const CHANGED = 'It was changed since it was written, and was left as it is.';
const SOURCE = 'The picture that it was made of is not there as it was, so it was left as it is.';
const REPLACED =
  'It took the place of an earlier result, which cannot be brought back, so it was left as it is.';
