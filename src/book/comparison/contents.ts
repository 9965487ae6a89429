// no-unit-test: test/book/comparison/compare.test.ts compares books through it
import type { PictureFacts } from '../../shared/picture';
import type { Target } from '../../shared/target';
import type { FactsCache } from '../cache/cache';
import { forecastAhead } from '../forecasts';
import type { Blobs } from '../git/blobs';
import type { Repository } from '../git/repository';
import { sizesOf } from '../git/sizes';
import { standings } from '../pictures';
import type { Pool } from '../pool';
import { knownFacts } from '../revisions/known';
import { contentsToRead, type PageOf, type unchangedPages } from '../revisions/page-changes';
import { type NamedContent, readBlobs } from '../revisions/read';
import type { Side } from '../revisions/side';
import { type PixelsAlike, pixelsAlike } from './pixels';
import type { Sides } from './sides';

export interface ContentReading {
  repository: Repository;
  blobs: Blobs;
  pool: Pick<Pool, 'factsOf' | 'pixels'>;
  cache: FactsCache | null;
  signal?: AbortSignal;
  onProgress?: (done: number, total: number) => void;
}

/** What was found out of the contents of two states. */
export interface Contents {
  /** Of a picture of either side, by path; null: nobody looked. */
  factsOn: (side: Side) => (path: string) => PictureFacts[] | null;
  /** Of unchanged pictures, by what git calls them; null: not all of them are known. */
  known: ReadonlyMap<string, PictureFacts[]> | null;
  alike: PixelsAlike;
  /** Bytes, by what git calls the content. */
  sizes: ReadonlyMap<string, number>;
}

/**
 * Reads what differs. Of what is unchanged the facts are taken from the cache if all of them are there; else it is read
 * where `whole` says so, and otherwise nothing is known of it. @throws GitError; the signal's reason when cancelled
 */
export async function contentsOfBoth(
  sides: Sides,
  {
    pages,
    same,
    whole,
  }: { pages: readonly PageOf[]; same: ReturnType<typeof unchangedPages>; whole: boolean },
  reading: ContentReading,
): Promise<Contents> {
  const { repository, cache, signal } = reading;
  const contents = pages.flatMap(contentsToRead);
  const isKnown = ({ oid }: NamedContent) => Boolean(cache?.blobFacts(oid));
  // of a clone without all contents git tells no size after the first that is missing: those that are read come first
  const inTurn = [...contents.filter(one => !isKnown(one)), ...contents.filter(isKnown)];
  const oids = inTurn.map(({ oid }) => oid);
  const sizes = await sizesOf(repository, oids, signal);
  const onRead = forecaster([sides.base, sides.head]);
  const read = await readBlobs(contents, { ...reading, sizes, onRead });
  const alike = await pixelsAlike(pages, read, { ...reading, sizes });
  const unchanged = same.map(([path, { oid }]) => ({ oid, path }));
  const known =
    (await knownFacts(repository, same, cache)) ?? (whole ? await readBlobs(unchanged, reading) : null);
  const factsOn = (side: Side) => (path: string) => {
    const { oid } = side.pages.get(path)!;
    return read.get(oid) ?? known?.get(oid) ?? null;
  };
  return { factsOn, known, alike, sizes };
}

/** Forecasts what was read as the sides will want it, while the readers work on what is left. */
function forecaster(sides: readonly Side[]): (oid: string, facts: readonly PictureFacts[]) => void {
  const targets = new Map<string, Target[]>();
  for (const { settings, pages } of sides) {
    const standing = standings(settings);
    for (const [path, { oid }] of pages)
      targets.set(oid, [...(targets.get(oid) ?? []), ...standing(path).targets]);
  }
  return (oid, facts) => forecastAhead(facts, targets.get(oid) ?? []);
}
