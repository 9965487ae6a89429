import fs from 'node:fs/promises';
import path from 'node:path';

/**
 * Makes a folder and those above it that are not there. Node's own way tries for ever where the system says of a folder that
 * is there that it is not, as Linux does in /proc. @throws what the file system says
 */
export async function makeFolder(folder: string): Promise<void> {
  if (await isThere(folder)) return;
  const above = path.dirname(folder);
  if (above !== folder) await makeFolder(above);
  await fs.mkdir(folder).catch(async (error: NodeJS.ErrnoException) => {
    // somebody else made it meanwhile
    if (error.code !== 'EEXIST' || !(await isThere(folder))) throw error;
  });
}

const isThere = (folder: string): Promise<boolean> =>
  fs.stat(folder).then(
    stat => stat.isDirectory(),
    () => false,
  );
