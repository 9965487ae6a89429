// no-unit-test: three lines around a library; the tests of the command line set EVENGREY_CACHE_DIR
import envPaths from 'env-paths';

/** The user's cache folder; `EVENGREY_CACHE_DIR` names another. */
export const cacheFolder = (): string =>
  process.env.EVENGREY_CACHE_DIR || envPaths('evengrey', { suffix: '' }).cache;
