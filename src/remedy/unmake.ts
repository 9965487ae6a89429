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
 * still is what was written, to the byte, and its picture what it was made of. One that is gone already is passed over.
 * @param memory the user's cache folder, which knows what was written
 */
export async function unmake(memory: string, files: readonly string[]): Promise<Unmade[]> {
  const results = new Results(memory);
  const unmade: Unmade[] = [];
  for (const file of files) {
    const existing = await results.at(file);
    if (existing.kind === 'nothing') continue;
    const stays = (reason: string) => unmade.push({ file, reason });
    if (existing.kind !== 'file' || !existing.made) stays(CHANGED);
    else if ((await hashOf(existing.made.source).catch(() => null)) !== existing.made.from) stays(SOURCE);
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
