// no-unit-test: test/remedy/batch.test.ts and test/remedy/undo.test.ts go through every step of it, test/cli/actions/convert-accidents.test.ts is killed in all of them
import fs from 'node:fs/promises';
import { dress, takePlace } from './arrive';
import { now } from './journal';
import { CHANGED, keepOriginal } from './originals';
import { type OpenKeep, pathIn } from './place';

/** A converted picture that is to take the place of its original. */
export interface Replacement {
  /** Absolute, links resolved. */
  file: string;
  /** Finished and flushed, beside it. */
  temporary: string;
  /** SHA-256 of the original and of what takes its place. */
  from: string;
  to: string;
  wish: string;
}

/**
 * Original kept and flushed, journal, rename, folder flushed, journal: whatever happens in between, the original's
 * bytes are in their place or in the keep, and the picture is the old one or the new one, whole.
 */
export async function replacePicture(keep: OpenKeep, what: Replacement): Promise<void> {
  const { file, temporary, from, to, wish } = what;
  const stat = await fs.stat(file);
  await keepOriginal(keep.folder, file, from);
  await dress(temporary, stat);
  const { size: bytes } = await fs.stat(temporary);
  const was = { mode: stat.mode & 0o7777, modified: stat.mtimeMs };
  const entry = { path: pathIn(keep, file), from, to, bytes, ...was, wish };
  await keep.journal.add({ event: 'replacing', ...entry, at: now() });
  await takePlace(temporary, file, from, CHANGED);
  await keep.journal.add({ event: 'replaced', ...entry, at: now() });
}
