// no-unit-test: test/book/settings/load.test.ts loads profiles, test/print and test/colour read them
import { createHash } from 'node:crypto';
import { readPressProfile } from '../../print';
import type { PressProfile } from '../../shared/target';
import { type SettingsFiles, TooLarge } from './within';

/** The largest profiles of presses, with fine tables, have some 10 MB. */
const MOST_BYTES = 64 * 1024 * 1024;

/** By content: an editor loads its settings again and again, and each reading takes memory for good. */
const read = new Map<string, Promise<PressProfile>>();

/**
 * The print house's profile in a file that `within` has passed.
 * @throws Error that says in plain words what is wrong with it and what to do
 */
export async function pressProfileIn(source: SettingsFiles, file: string): Promise<PressProfile> {
  const bytes = await source.bytes(file, MOST_BYTES).catch(error => {
    throw error instanceof TooLarge ? new Error(`the file ${error.message}: it is no ICC profile`) : error;
  });
  const id = createHash('sha256').update(bytes).digest('hex');
  let profile = read.get(id);
  if (!profile) {
    profile = readPressProfile(bytes);
    read.set(id, profile);
  }
  return profile;
}
