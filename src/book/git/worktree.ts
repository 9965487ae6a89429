import { askGit, pieces } from './git';
import type { Repository } from './repository';

/**
 * Which files of the book's folder hold, by git's index, exactly what git calls so: path -> name of the content. Nothing
 * is opened where size and times say enough; no filter that the repository's settings name is run on the others, so that
 * these may be left out.
 */
export async function settledFiles(repository: Repository): Promise<Map<string, string>> {
  const { root } = repository;
  const env = { ...repository.env, ...(await withoutFilters(repository)) };
  const listed = pieces(await askGit(root, ['ls-files', '--stage', '-z'], { env }));
  const changed = new Set(
    pieces(await askGit(root, ['diff-files', '-z', '--name-only', '--relative', '--no-ext-diff'], { env })),
  );
  const settled = new Map<string, string>();
  for (const line of listed) {
    const [, oid, path] = /^100\d{3} ([0-9a-f]+) 0\t(.*)$/s.exec(line) ?? [];
    if (path !== undefined && !changed.has(path)) settled.set(path, oid);
  }
  return settled;
}

/** Settings, by the environment, that put nothing in the place of every program that would change contents. */
export async function withoutFilters({ root }: Repository): Promise<Record<string, string>> {
  const named = await askGit(root, ['config', '--null', '--name-only', '--list']);
  const keys = [...new Set(pieces(named))].filter(key => /^filter\..*\.(clean|smudge|process)$/is.test(key));
  const required = keys.map(key => key.replace(/\.\w+$/, '.required'));
  const overrides = [...keys.map(key => [key, '']), ...required.map(key => [key, 'false'])];
  return Object.fromEntries([
    ['GIT_CONFIG_COUNT', String(overrides.length)],
    ...overrides.flatMap(([key, value], i) => [
      [`GIT_CONFIG_KEY_${i}`, key],
      [`GIT_CONFIG_VALUE_${i}`, value],
    ]),
  ]);
}
