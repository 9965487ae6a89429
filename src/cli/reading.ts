// no-unit-test: test/cli runs the built program with its readers and its cache
import path from 'node:path';
import { FactsCache } from '../book/cache/cache';
import { cacheFolder } from '../book/cache/folder';
import { factsVersion } from '../book/cache/version';
import { createPool, type Pool } from '../book/pool';
import { Interrupted } from './interrupt';

const KEPT = 'What was read so far is kept for the next time.';

const READER = path.join(__dirname, 'reader.js');

export interface Reading {
  pool: Pool;
  /** Null where it was not wanted. */
  cache: FactsCache | null;
}

/**
 * Opens readers and the cache of the book at `root` for some work; what was read is kept even if the work fails or is
 * stopped.
 */
export async function withReading<T>(
  root: string,
  options: { jobs?: number; cache: boolean },
  work: (reading: Reading) => Promise<T>,
): Promise<T> {
  const reading = async (cache: FactsCache | null) => {
    const pool = createPool({ readerFile: READER, size: options.jobs, onLost: tellLost(root) });
    try {
      return await work({ pool, cache });
    } finally {
      await pool.close();
    }
  };
  if (!options.cache) return reading(null);
  let cache: FactsCache | null = null;
  return withCache(root, opened => {
    cache = opened;
    return reading(opened);
  }).catch(error => {
    throw error instanceof Interrupted && !cache?.trouble
      ? new Interrupted(error.exitCode, `${error.message} ${KEPT}`)
      : error;
  });
}

/** Opens the cache alone, for work that has its own readers. */
export async function withCache<T>(root: string, work: (cache: FactsCache) => Promise<T>): Promise<T> {
  const cache = await FactsCache.open(cacheFolder(), root, await factsVersion(READER));
  try {
    return await work(cache);
  } finally {
    await cache.save();
    if (cache.trouble)
      process.stderr.write(
        `The cache could not be kept, so everything will be read again (${cache.trouble}).\n`,
      );
  }
}

/** Says on the error stream that a child was lost on a picture, for `PoolOptions.onLost`. */
export const tellLost =
  (root: string) =>
  (file: string, why: string): void => {
    process.stderr.write(`A process was lost on "${path.relative(root, file)}" (${why}); another goes on.\n`);
  };
