// no-unit-test: test/book/comparison/compare.test.ts compares books through it
import fs from 'node:fs/promises';
import path from 'node:path';
import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { stampOf } from '../cache/stamp';
import { ofPointer } from '../git/content';
import type { Repository } from '../git/repository';
import type { Entry } from '../git/snapshot';
import { settledFiles } from '../git/worktree';
import { inLanes } from '../lanes';

const LOOKING = 32;

/**
 * Facts of pictures that are known without reading any of them: of earlier comparisons by the content's name in git, of
 * earlier checks where the file in the book's folder still holds that content. Null where one of them is not known: what
 * is said of a set must not hang on which of its pictures happen to be known.
 */
export async function knownFacts(
  repository: Repository,
  pages: readonly (readonly [path: string, entry: Entry])[],
  cache: FactsCache | null,
): Promise<Map<string, PictureFacts[]> | null> {
  if (!pages.length) return new Map();
  if (!cache) return null;
  const facts = new Map<string, PictureFacts[]>();
  const others = pages.filter(([, { oid }]) => {
    const known = cache.blobFacts(oid);
    if (known) facts.set(oid, known);
    return !known;
  });
  if (!others.length) return facts;
  if (others.some(([name]) => !cache.knowsFile(name))) return null;
  const checked = await inLanes(others, LOOKING, async ([name]) => {
    const stat = await fs.lstat(path.join(repository.root, name), { bigint: true }).catch(() => null);
    const entry = stat?.isFile() ? cache.lookUp(name, stampOf(stat)) : null;
    return entry?.settled ? entry.sha256 : null;
  });
  // git is asked only where that can help
  if (checked.includes(null)) return null;
  const settled = await settledFiles(repository);
  for (const [at, [name, { oid }]] of others.entries()) {
    const sha256 = checked[at]!;
    const known = settled.get(name) === oid ? cache.facts(sha256) : null;
    if (!known) return null;
    if (known.some(({ unreadable }) => unreadable?.reason === 'not-fetched')) {
      const behind = await behindPointer(path.join(repository.root, name), repository, cache);
      if (!behind) return null;
      facts.set(oid, behind);
      continue;
    }
    facts.set(oid, known);
    cache.rememberBlob(oid, sha256, null);
  }
  return facts;
}

/** A pointer's picture may lie in the store meanwhile. Null where it does, and nobody has read it. */
async function behindPointer(
  file: string,
  repository: Repository,
  cache: FactsCache,
): Promise<PictureFacts[] | null> {
  const text = await fs.readFile(file, 'utf8').catch(() => '');
  const pointed = await ofPointer(text, repository);
  if (!pointed) return null;
  return 'pointer' in pointed ? cache.facts(pointed.pointer.oid) : [pointed.lost];
}
