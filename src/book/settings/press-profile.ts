// no-unit-test: test/book/settings/load.test.ts loads profiles, test/print and test/colour read them
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import { readPressProfile } from '../../print';
import type { PressProfile } from '../../shared/target';

/** The largest profiles of presses, with fine tables, have some 10 MB. */
const MOST_BYTES = 64 * 1024 * 1024;

/** By content: an editor loads its settings again and again, and each reading takes memory for good. */
const read = new Map<string, Promise<PressProfile>>();

/**
 * The print house's profile in a file that `fileWithin` has passed.
 * @throws Error that says in plain words what is wrong with it and what to do
 */
export async function pressProfileIn(file: string): Promise<PressProfile> {
  const { size } = await fs.stat(file);
  if (size > MOST_BYTES)
    throw new Error(`the file is larger than ${MOST_BYTES / 1024 / 1024} MB: it is no ICC profile`);
  const bytes = await fs.readFile(file);
  const id = createHash('sha256').update(bytes).digest('hex');
  let profile = read.get(id);
  if (!profile) {
    profile = readPressProfile(bytes);
    read.set(id, profile);
  }
  return profile;
}
