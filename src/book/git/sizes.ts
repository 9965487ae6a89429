import { runGit } from './git';
import type { Repository } from './repository';

/** Bytes of contents, by what git calls them; of those that are not in this clone nothing is said. */
export async function sizesOf(
  { root, env }: Pick<Repository, 'root' | 'env'>,
  oids: readonly string[],
  signal?: AbortSignal,
): Promise<Map<string, number>> {
  if (!oids.length) return new Map();
  const input = oids.map(oid => `${oid}\n`).join('');
  // of a clone without all contents git ends at the first that is missing
  const { stdout } = await runGit(root, ['cat-file', '--batch-check'], { env, input, signal });
  const told = stdout.toString('latin1').matchAll(/^([0-9a-f]+) blob (\d+)$/gm);
  return new Map([...told].map(([, oid, size]) => [oid, Number(size)]));
}
