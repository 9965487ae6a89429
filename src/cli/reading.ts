// no-unit-test: test/cli runs the built program with its readers and its cache
import path from 'node:path';
import { FactsCache } from '../book/cache/cache';
import { cacheFolder } from '../book/cache/folder';
import { factsVersion } from '../book/cache/version';
import { createPool, type Pool } from '../book/pool';

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
  const readerFile = path.join(__dirname, 'reader.js');
  const cache = options.cache
    ? await FactsCache.open(cacheFolder(), root, await factsVersion(readerFile))
    : null;
  const pool = createPool({
    readerFile,
    size: options.jobs,
    onLost: (file, why) =>
      process.stderr.write(
        `A reader was lost on "${path.relative(root, file)}" (${why}); another read on.\n`,
      ),
  });
  try {
    return await work({ pool, cache });
  } finally {
    await Promise.all([pool.close(), cache?.save()]);
    if (cache?.trouble)
      process.stderr.write(
        `The cache could not be kept, so everything will be read again (${cache.trouble}).\n`,
      );
  }
}
