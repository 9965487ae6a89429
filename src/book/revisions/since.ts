// no-unit-test: test/cli/actions/since.test.ts runs the built program in repositories of every kind
import fs from 'node:fs/promises';
import type { BookReport } from '../../shared/finding';
import type { PictureFacts } from '../../shared/picture';
import { bookFiles } from '../book-files';
import type { CheckOptions } from '../check';
import type { Found } from '../discovery/discover';
import { type Gathering, gather, recall } from '../gather';
import { Blobs } from '../git/blobs';
import { openRepository, type Repository } from '../git/repository';
import { commitOf, mergeBase } from '../git/revision';
import { snapshotOf } from '../git/snapshot';
import { besides } from '../named';
import type { Pool } from '../pool';
import type { Settings } from '../settings/settings';
import { readWaivers } from '../waivers/file';
import { concernedBy, concernedOf, goneFrom, groundOf } from './concerned';
import { judgedBefore } from './drawn-in';
import { knownFacts } from './known';
import { namingOf, newSlips } from './new-slips';
import { reportOfChanged } from './partial';
import { type Same, sortedByChange } from './sorted';
import { namedBy } from './staged';

export interface SinceOptions extends Omit<CheckOptions, 'pool'> {
  pool: Pick<Pool, 'facts' | 'factsOf'>;
  /** A revision. What happened on its own line after the two parted is no change of this book. */
  since: string;
  /** The settings are asked for by name, so that they are no others than before. */
  settingsNamed: boolean;
  /** Makes of the settings of that revision what was asked for on the spot: other conditions. */
  adjust: (settings: Settings) => Settings;
  /** Read the unchanged pictures too, where they are not known. */
  whole: boolean;
}

/**
 * Checks the pictures of a book's folder that are not what they were in a revision: changed, renamed or new, committed or
 * not. @throws GitError; the signal's reason when cancelled
 */
export async function checkSince(options: SinceOptions): Promise<BookReport> {
  const { root, paths, settings, pool, cache, since, whole, signal, onProgress } = options;
  const repository = await openRepository(root);
  const commit = await mergeBase(
    repository,
    await commitOf(repository, since),
    await commitOf(repository, 'HEAD'),
    'Name a revision that they share.',
  );
  const blobs = new Blobs(repository);
  try {
    const found = await bookFiles({ root, paths, settings, signal });
    const before = await snapshotOf(repository, commit);
    const realRoot = await fs.realpath(root);
    const reading = { realRoot, pool, cache, signal, onProgress };
    const held = { repository, realRoot, blobs, signal };
    const sorted = await sortedByChange(found.files, before, held);
    const { others: beside, placements } = await besides(found, options);
    const ground = await groundOf(root, before, blobs, {
      named: options.settingsNamed ? settings : null,
      adjust: options.adjust,
    });
    const { waivers } = await readWaivers(root);
    const now = {
      settings,
      waivers,
      placements,
      missing: found.missing,
      pages: new Set(found.files.map(({ path }) => path)),
    };
    const named = {
      settings,
      pictures: [...found.files, ...found.missing].map(({ path }) => path),
      notInBook: found.notInBook,
    };
    const concerned = concernedBy(ground, now, sorted.renamed);
    const isConcerned = ({ file: { path } }: Same) => concerned.why(path) !== null;
    const same = sorted.same.filter(one => !isConcerned(one));
    const judgedAnew = sorted.same.filter(isConcerned).map(({ file }) => file);
    const changed = [...sorted.changed, ...judgedAnew];
    const facts = await gather(changed, reading);
    const others = await factsOfOthers(same, beside, { repository, whole, reading });
    const sameFacts = others && new Map(same.map(({ file: { path } }) => [path, others.get(path)!]));
    const was =
      ground && sameFacts?.size && paths.includes(root)
        ? await judgedBefore(ground, sameFacts, { repository, blobs, pool, cache, signal })
        : null;
    return await reportOfChanged(
      {
        changed: [
          ...changed.map((file, i) => ({ path: file.path, facts: facts[i] })),
          // placed still, and taken away since
          ...found.missing.filter(({ path }) => ground?.pages.has(path) || concerned.why(path) !== null),
        ],
        concerned: concernedOf(
          judgedAnew.map(({ path }) => path),
          concerned,
        ),
        gone: goneFrom(ground, now, new Set()).filter(namedBy(root, paths)),
        others,
        before: was,
        unchanged: same.length + beside.length,
        idle: paths.includes(root) ? newSlips(ground && namingOf(ground), named) : [],
        held: found.files.length + found.missing.length,
        which: `changed since ${since} (${commit.slice(0, 10)})`,
      },
      settings,
      found,
      { placements, waivers: options.waivers, signal },
    );
  } finally {
    blobs.close();
  }
}

/**
 * Facts of pictures that did not change (`same`), and of those beside the folders that were named; null: not all are known,
 * and nobody asked to read them.
 */
async function factsOfOthers(
  same: readonly Same[],
  beside: readonly Found[],
  { repository, whole, reading }: { repository: Repository; whole: boolean; reading: Gathering },
): Promise<Map<string, PictureFacts[]> | null> {
  const entries = same.map(({ at, entry }) => [at, entry] as const);
  const known = await knownFacts(repository, entries, reading.cache);
  const recalled = known && (await recall(beside, reading.cache));
  if (known && recalled)
    return new Map([
      ...same.map(({ file, entry }) => [file.path, known.get(entry.oid)!] as const),
      ...beside.map(({ path }, i) => [path, recalled[i]] as const),
    ]);
  if (!whole) return null;
  const files = [...same.map(({ file }) => file), ...beside];
  const facts = await gather(files, reading);
  return new Map(files.map(({ path }, i) => [path, facts[i]]));
}
