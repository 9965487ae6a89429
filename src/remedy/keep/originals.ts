import fs, { constants } from 'node:fs/promises';
import path from 'node:path';
import { hashOf } from '../../book/hash';
import { RemedyError } from '../remedy-error';
import { flushFile, flushFolder } from './flush';
import { originalsIn } from './place';
import { withTemporary } from './temporary';

/** Where an original lies in a keep. */
export const originalIn = (folder: string, sha256: string) => path.join(originalsIn(folder), sha256);

/**
 * Keeps a picture by its content: a copy that was read again, on the disk before this returns.
 * @throws RemedyError where the file does not have this content any more; what the file system says
 */
export async function keepOriginal(folder: string, file: string, sha256: string): Promise<void> {
  const kept = originalIn(folder, sha256);
  if (await holds(kept, sha256)) return;
  await withTemporary(kept, async temporary => {
    await copy(file, temporary, sha256);
    await fs.chmod(temporary, 0o444);
    await fs.rename(temporary, kept);
  });
  await flushFolder(originalsIn(folder));
}

/** A kept original is missing or damaged. */
export class OriginalLost extends RemedyError {}

/**
 * Looks at a kept original, every byte of it.
 * @returns where it lies
 * @throws OriginalLost where it is not there or damaged
 */
export async function heldOriginal(folder: string, sha256: string): Promise<string> {
  const kept = originalIn(folder, sha256);
  if (await holds(kept, sha256)) return kept;
  throw new OriginalLost(
    `The kept original "${kept}" is missing or damaged, so the picture was left as it is. Bring the original back from a copy of your own.`,
  );
}

/**
 * Copies an original out of a keep.
 * @throws OriginalLost where it is not there or damaged
 */
export async function copyOriginal(folder: string, sha256: string, to: string): Promise<void> {
  await copy(await heldOriginal(folder, sha256), to, sha256);
}

/** Bytes that are flushed and then read again. */
async function copy(file: string, to: string, sha256: string): Promise<void> {
  await fs.copyFile(file, to, constants.COPYFILE_FICLONE);
  await fs.chmod(to, 0o600);
  await flushFile(to);
  if ((await hashOf(to)) !== sha256) throw new RemedyError(CHANGED);
}

export const CHANGED =
  'The picture was changed while it was converted, and was left as it is now. Convert it again once nobody is writing it.';

const holds = (file: string, sha256: string): Promise<boolean> =>
  hashOf(file).then(
    hash => hash === sha256,
    () => false,
  );
