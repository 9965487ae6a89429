// no-unit-test: test/remedy/batch.test.ts and test/remedy/undo.test.ts work under it
import fs from 'node:fs/promises';
import { RemedyError } from '../remedy-error';
import { lock } from './lock';
import { keepOf, type OpenKeep, openKeep } from './place';

/**
 * Works with the keep of the book at `root`, while no other run may.
 * @param refused says why nothing is done where nothing can be written there, and the way out
 * @throws RemedyError where another run does, or nothing can be written there
 */
export async function withKeep<T>(
  root: string,
  refused: (folder: string, code: string) => string,
  work: (keep: OpenKeep) => Promise<T>,
): Promise<T> {
  const keep = await keepOf(await fs.realpath(root));
  let open: OpenKeep;
  let unlock: () => Promise<void>;
  try {
    open = await openKeep(keep);
    unlock = await lock(keep.folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (!code) throw error;
    throw new RemedyError(refused(keep.folder, code));
  }
  try {
    return await work(open);
  } finally {
    await unlock();
  }
}
