// no-unit-test: what it guards against is a loss of power; every test of this folder goes through it
import fs from 'node:fs/promises';

/** Waits until the file's bytes are on the disk. */
export async function flushFile(file: string): Promise<void> {
  const handle = await fs.open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Waits until a folder's names are on the disk, where the system can do that: Windows and some networks cannot. */
export async function flushFolder(folder: string): Promise<void> {
  const handle = await fs.open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => {});
  await handle?.close();
}
