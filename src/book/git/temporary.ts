import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { GitError } from './git';

/** Gives work a new folder for as long as it takes. @throws GitError where there is none to be had, or no room left in it */
export async function inTemporaryFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = await newTemporaryFolder();
  try {
    return await work(folder);
  } catch (error) {
    throw codeOf(error) === 'ENOSPC' ? noRoom() : error;
  } finally {
    await fs.rm(folder, { recursive: true, force: true });
  }
}

/** A new folder, which whoever asks for it takes away. @throws GitError as above */
export async function newTemporaryFolder(): Promise<string> {
  try {
    return await fs.mkdtemp(path.join(os.tmpdir(), 'evengrey-'));
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOSPC') throw noRoom();
    throw new GitError(
      `Nothing can be written where temporary files go ("${os.tmpdir()}": ${REASONS[code] ?? code}), and what git holds is unpacked there. Put that right, or ${ELSEWHERE}`,
    );
  }
}

export const noRoom = (): GitError =>
  new GitError(
    `There is no room left where temporary files go ("${os.tmpdir()}"), and what git holds is unpacked there. Make room, or ${ELSEWHERE}`,
  );

/** The one that goes before others of its kind (Node.js, `os.tmpdir`). */
const VARIABLE = process.platform === 'win32' ? 'TEMP' : 'TMPDIR';
const ELSEWHERE = `name another folder in the environment variable ${VARIABLE}.`;

const REASONS: Record<string, string> = {
  ENOENT: 'there is no such folder',
  ENOTDIR: 'it is no folder',
  EACCES: 'you have no right to',
  EPERM: 'you have no right to',
  EROFS: 'it is there for reading only',
};

const codeOf = (error: unknown): string => String((error as NodeJS.ErrnoException).code);
