import fs from 'node:fs/promises';
import path from 'node:path';
import { type Stamp, sameStamp, stampOf } from '../../book/cache/stamp';
import { hashOf } from '../../book/hash';
import { RemedyError } from '../remedy-error';
import { flushFolder } from './flush';

/**
 * Gives a finished temporary file its name, where nothing has that name yet.
 * @throws RemedyError where something has; what the file system says
 */
export async function arrive(temporary: string, file: string): Promise<void> {
  try {
    await fs.link(temporary, file);
    await fs.unlink(temporary);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') throw taken(file);
    if (!code || !NO_LINKS.includes(code)) throw error;
    if (await fs.lstat(file).catch(() => null)) throw taken(file);
    await fs.rename(temporary, file);
  }
  await flushFolder(path.dirname(file));
}

/** What file systems without hard links answer. */
const NO_LINKS = ['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK', 'EXDEV'];

const taken = (file: string) =>
  new RemedyError(`"${path.basename(file)}" came into being meanwhile, and was not written over.`);

/**
 * Puts a finished temporary file in the place of another, if that still has the content it should have: it is looked at
 * again right before the rename, which is all or nothing.
 * @param otherwise said where it has not
 * @throws RemedyError with `otherwise`; what the file system says
 */
export async function takePlace(
  temporary: string,
  file: string,
  sha256: string,
  otherwise: string,
): Promise<void> {
  const before = await stampAt(file);
  const same = before && (await hashOf(file)) === sha256;
  const now = same && (await stampAt(file));
  if (!now || !sameStamp(before, now)) throw new RemedyError(otherwise);
  await fs.rename(temporary, file);
  await flushFolder(path.dirname(file));
}

async function stampAt(file: string): Promise<Stamp | null> {
  const stat = await fs.lstat(file, { bigint: true }).catch(() => null);
  return stat?.isFile() ? stampOf(stat) : null;
}

/** Gives a temporary file the rights of the picture it stands in for, and its owner where that is allowed. */
export async function dress(
  temporary: string,
  { mode, uid, gid }: { mode: number; uid: number; gid: number },
) {
  await fs.chown(temporary, uid, gid).catch(() => {});
  await fs.chmod(temporary, mode & 0o7777);
}
