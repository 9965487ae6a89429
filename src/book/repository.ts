import fs from 'node:fs/promises';
import path from 'node:path';

/**
 * The root (absolute) of the git repository that `folder` (absolute) lies in: the nearest folder upward with a `.git`,
 * which is a file in a linked work tree and in a submodule. `folder` itself where there is none.
 */
export async function repositoryOf(folder: string): Promise<string> {
  for (let at = folder; ; at = path.dirname(at)) {
    if (await fs.lstat(path.join(at, '.git')).catch(() => null)) return at;
    if (path.dirname(at) === at) return folder;
  }
}
