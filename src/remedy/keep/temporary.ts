import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from './running';

/** Longest name that file systems take, in bytes. */
const MOST_BYTES = 255;
const LEFTOVER = /^\..+\.evengrey-(\d+)\.tmp$/s;

/** What this process is writing. */
const inUse = new Set<string>();

/** Where a file is written before it gets its name: beside it, hidden, and never called like a picture. */
export function temporaryFor(file: string): string {
  const end = `.evengrey-${process.pid}.tmp`;
  const name = path.basename(file);
  const room = MOST_BYTES - end.length - 1;
  const short =
    Buffer.byteLength(name) <= room ? name : createHash('sha256').update(name).digest('hex').slice(0, room);
  return path.join(path.dirname(file), `.${short}${end}`);
}

/** Works with the temporary file of `file`, which is gone afterwards: it has got its name, or is not wanted. */
export async function withTemporary<T>(file: string, work: (temporary: string) => Promise<T>): Promise<T> {
  const temporary = temporaryFor(file);
  inUse.add(temporary);
  try {
    return await work(temporary);
  } finally {
    inUse.delete(temporary);
    await fs.rm(temporary, { force: true }).catch(() => {});
  }
}

/** Removes what killed runs left behind in a folder. What somebody is still writing stays. */
export async function sweep(folder: string): Promise<void> {
  const names = await fs.readdir(folder).catch(() => []);
  for (const name of names) {
    const pid = Number(LEFTOVER.exec(name)?.[1] ?? Number.NaN);
    const file = path.join(folder, name);
    const isWritten = pid === process.pid ? inUse.has(file) : isRunning(pid);
    if (!Number.isNaN(pid) && !isWritten) await fs.rm(file, { force: true }).catch(() => {});
  }
}
