// no-unit-test: test/remedy/batch.test.ts and test/remedy/undo.test.ts go through every step of it, test/cli/actions/convert-accidents.test.ts is killed in all of them
import fs from 'node:fs/promises';
import { dress, takePlace } from './arrive';
import type { Known } from './history';
import { now } from './journal';
import { copyOriginal } from './originals';
import { openKeep, pathIn } from './place';
import { withTemporary } from './temporary';

/**
 * Puts an original back in the place of what it was converted to: its bytes, its rights and its time. Safe in the same order as
 * the conversion was.
 * @throws RemedyError where the picture is not what the conversion made, or the original is lost; what the file system
 * says
 */
export async function restorePicture(file: string, { keep, entry }: Known): Promise<void> {
  const open = await openKeep(keep);
  await withTemporary(file, async temporary => {
    const { uid, gid } = await fs.stat(file);
    await copyOriginal(keep.folder, entry.from, temporary);
    await dress(temporary, { mode: entry.mode, uid, gid });
    const { modified } = entry;
    if (modified !== undefined) await fs.utimes(temporary, new Date(), modified / 1000);
    const done = { ...entry, path: pathIn(keep, file) };
    await open.journal.add({ ...done, event: 'restoring', at: now() });
    await takePlace(temporary, file, entry.to, CHANGED);
    await open.journal.add({ ...done, event: 'restored', at: now() });
  });
}

const CHANGED = 'The picture was changed while it was to be undone, and was left as it is now.';
