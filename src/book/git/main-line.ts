import { runGit } from './git';
import type { Repository } from './repository';

/** Names that a repository's main branch goes by where nobody has said which it is. Common practice, no source. */
const USUAL = ['main', 'master', 'trunk'];

/**
 * The branch that others start from and come back to, as git names it here: what the clone's origin says, else a branch of
 * a usual name, there or here. Null where there is none of them.
 */
export async function mainLine(repository: Pick<Repository, 'root'>): Promise<string | null> {
  const { root } = repository;
  const said = await runGit(root, ['symbolic-ref', '--quiet', '--short', 'refs/remotes/origin/HEAD']);
  const named = said.code === 0 ? [said.stdout.toString('utf8').trim()] : [];
  const usual = [...USUAL.map(name => `origin/${name}`), ...USUAL];
  for (const name of [...named, ...usual]) {
    const ref = name.startsWith('origin/') ? `refs/remotes/${name}` : `refs/heads/${name}`;
    const { code } = await runGit(root, ['show-ref', '--verify', '--quiet', ref]);
    if (code === 0) return name;
  }
  return null;
}
