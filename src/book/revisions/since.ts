// no-unit-test: test/cli/actions/since.test.ts runs the built program in repositories of every kind
import fs from 'node:fs/promises';
import path from 'node:path';
import { gitName } from '../../picture/git-name';
import type { BookReport } from '../../shared/finding';
import type { PictureFacts } from '../../shared/picture';
import { bookFiles } from '../book-files';
import type { CheckOptions } from '../check';
import type { Found } from '../discovery/discover';
import { gather, recall } from '../gather';
import { Blobs } from '../git/blobs';
import { holds } from '../git/hash';
import { openRepository, type Repository } from '../git/repository';
import { commitOf, mergeBase } from '../git/revision';
import { type Entry, isLink, type Snapshot, snapshotOf } from '../git/snapshot';
import { settledFiles } from '../git/worktree';
import { inLanes } from '../lanes';
import { besides } from '../named';
import type { Pool } from '../pool';
import type { Settings } from '../settings/settings';
import { readWaivers } from '../waivers/file';
import { concernedBy, concernedOf, goneFrom, groundOf } from './concerned';
import { judgedBefore } from './drawn-in';
import { GitTree } from './git-tree';
import { knownFacts } from './known';
import { namingOf, newSlips } from './new-slips';
import { reportOfChanged } from './partial';
import { namedBy } from './staged';

const LOOKING = 8;

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
    const {
      changed: touched,
      same: alike,
      renamed,
    } = await sorted(found.files, before, repository, realRoot, blobs, signal);
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
    const concerned = concernedBy(ground, now, renamed);
    const isConcerned = ({ file: { path } }: Same) => concerned.why(path) !== null;
    const same = alike.filter(one => !isConcerned(one));
    const judgedAnew = alike.filter(isConcerned).map(({ file }) => file);
    const changed = [...touched, ...judgedAnew];
    const facts = await gather(changed, reading);
    const known = await knownFacts(
      repository,
      same.map(({ at, entry }) => [at, entry] as const),
      cache,
    );
    const recalled = known && (await recall(beside, cache));
    let others: Map<string, PictureFacts[]> | null = null;
    if (known && recalled)
      others = new Map([
        ...same.map(({ file, entry }) => [file.path, known.get(entry.oid)!] as const),
        ...beside.map(({ path }, i) => [path, recalled[i]] as const),
      ]);
    else if (whole) {
      const files = [...same.map(({ file }) => file), ...beside];
      const all = await gather(files, reading);
      others = new Map(files.map(({ path }, i) => [path, all[i]]));
    }
    const sameFacts = others && new Map(same.map(({ file: { path } }) => [path, others!.get(path)!]));
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

/** A file that is what it was: where it truly lies in the book's folder, and what it was. */
interface Same {
  file: Found;
  at: string;
  entry: Entry;
}

async function sorted(
  files: readonly Found[],
  before: Snapshot,
  repository: Repository,
  realRoot: string,
  blobs: Blobs,
  signal?: AbortSignal,
): Promise<{ changed: Found[]; same: Same[]; renamed: { path: string; from: string }[] }> {
  const settled = await settledFiles(repository);
  const tree = new GitTree(before, blobs);
  const kept = await inLanes(files, LOOKING, async (file): Promise<Same | 'astray' | null> => {
    signal?.throwIfAborted();
    const entry = await tree.contentAt(file.path);
    if (file.obstacle) return !entry && (await isSameLink(file, before)) ? 'astray' : null;
    if (!entry) return null;
    const at = await trueName(file, realRoot);
    const same = settled.has(at)
      ? settled.get(at) === entry.oid
      : await holds(file.file, entry.oid, repository, blobs, signal).catch(() => false);
    return same ? { file, at, entry } : null;
  });
  const changed = files.filter((_, i) => kept[i] === null);
  return {
    changed,
    same: kept.filter(one => one !== null && one !== 'astray'),
    renamed: renamedAmong(changed, before, settled),
  };
}

/** Files that git knows by now and that hold, byte for byte, what one held that lies no more where it lay. */
function renamedAmong(
  changed: readonly Found[],
  before: Snapshot,
  settled: ReadonlyMap<string, string>,
): { path: string; from: string }[] {
  const gone = new Map(
    [...before].flatMap(([path, { oid }]) => (settled.has(path) ? [] : [[oid, path] as const])),
  );
  return changed.flatMap(({ path }) => {
    const from = before.has(path) ? undefined : gone.get(settled.get(path) ?? '');
    return from === undefined ? [] : [{ path, from }];
  });
}

/** A link that led nowhere before, too. */
async function isSameLink({ path, file }: Found, before: Snapshot): Promise<boolean> {
  const entry = before.get(path);
  if (!entry || !isLink(entry)) return false;
  const target = await fs.readlink(file, 'buffer').catch(() => null);
  return target !== null && gitName(entry.oid, target.length).update(target).digest('hex') === entry.oid;
}

/** A path through a link is unknown to git, which knows what it leads to. */
async function trueName({ path: name, file }: Found, realRoot: string): Promise<string> {
  const real = await fs.realpath(file).catch(() => null);
  return real === null ? name : path.relative(realRoot, real).split(path.sep).join('/');
}
