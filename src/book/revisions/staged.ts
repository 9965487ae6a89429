// no-unit-test: test/cli/actions/since.test.ts runs the built program in repositories of every kind
import path from 'node:path';
import type { BookReport } from '../../shared/finding';
import type { PictureFacts } from '../../shared/picture';
import type { CheckOptions } from '../check';
import { Blobs } from '../git/blobs';
import { type Change, changesStaged } from '../git/changes';
import { GitError } from '../git/git';
import { openRepository } from '../git/repository';
import { commitOf } from '../git/revision';
import { type Snapshot, snapshotOf, snapshotOfIndex } from '../git/snapshot';
import type { Pool } from '../pool';
import { SETTINGS_FILE } from '../settings/load';
import type { Settings } from '../settings/settings';
import type { Waiver } from '../waivers/key';
import { concernedBy, concernedOf, goneFrom, groundOf } from './concerned';
import { judgedBefore } from './drawn-in';
import { GitTree } from './git-tree';
import { knownFacts } from './known';
import { namingOf, newSlips } from './new-slips';
import { reportOfChanged } from './partial';
import { readBlobs } from './read';
import { type Side, sideOf, withSettings } from './side';
import { beyondNotice, submodulesOf } from './told';

export interface StagedOptions extends Omit<CheckOptions, 'settings' | 'pool' | 'waivers'> {
  pool: Pick<Pool, 'factsOf'>;
  /**
   * The settings to judge by, where they are not those that are staged: asked for by name, or of a book whose settings git
   * does not know.
   */
  settings: Settings;
  settingsNamed: boolean;
  /** Null: those that are staged, as the commit will hold them. */
  waivers: readonly Waiver[] | null;
  /** Makes of staged settings what was asked for on the spot: other conditions. */
  adjust: (settings: Settings) => Settings;
  /** Read the unchanged pictures too, where they are not known. */
  whole: boolean;
}

/**
 * Checks the pictures that a commit would change, as they are staged, and says by which waivers. @throws GitError, RevisionSettingsError; the signal's
 * reason when cancelled
 */
export async function checkStaged(
  options: StagedOptions,
): Promise<{ report: BookReport; waivers: readonly Waiver[] }> {
  const { root, paths, pool, cache, whole, signal, onProgress } = options;
  const repository = await openRepository(root);
  const head = await commitOf(repository, 'HEAD').catch(error => {
    if (error instanceof GitError) return null;
    throw error;
  });
  const blobs = new Blobs(repository);
  try {
    const committed: Snapshot = head === null ? new Map() : await snapshotOf(repository, head);
    const { changes } = await changesStaged(repository, head);
    const index = withoutAnnounced(await snapshotOfIndex(repository), committed, changes);
    const own = options.settingsNamed || !index.has(SETTINGS_FILE);
    const side = own
      ? await withSettings(root, options.settings, index, blobs, 'staged')
      : await sideOf(root, index, blobs, options.adjust, 'staged');
    const before = await groundOf(root, committed, blobs, {
      named: options.settingsNamed ? options.settings : null,
      adjust: options.adjust,
    });
    const concerned = concernedBy(before, side, changes);
    // by content: a link is what it was, and what it leads to may not be
    const then = new GitTree(committed, blobs);
    const touched = new Set<string>();
    for (const [name, { oid }] of side.pages)
      if ((await then.contentAt(name))?.oid !== oid) touched.add(name);
    for (const { path } of side.missing) if (before?.pages.has(path)) touched.add(path);
    const isJudged = (name: string) => touched.has(name) || concerned.why(name) !== null;
    const isNamed = namedBy(root, paths);
    const pages = [...side.pages].filter(([name]) => isNamed(name));
    const changed = pages.filter(([name]) => isJudged(name));
    const same = pages.filter(([name]) => !isJudged(name));
    const reading = {
      ...{ repository, blobs, pool, cache, signal },
      onProgress: onProgress && ((done: number, total: number) => onProgress(done, total, 'from git')),
    };
    const contents = (list: typeof pages) => list.map(([path, { oid }]) => ({ oid, path }));
    const facts = await readBlobs(contents(changed), reading);
    const known =
      (await knownFacts(repository, same, cache)) ??
      (whole ? await readBlobs(contents(same), reading) : null);
    const sameFacts = known && new Map(same.map(([path, { oid }]) => [path, known.get(oid)!]));
    const was =
      before && sameFacts?.size && paths.includes(root)
        ? await judgedBefore(before, sameFacts, reading)
        : null;
    const of = (list: typeof pages, all: Map<string, PictureFacts[]>) =>
      list.map(([name, { oid }]) => ({ path: name, facts: all.get(oid)! }));
    const waivers = options.waivers ?? side.waivers;
    const report = await reportOfChanged(
      {
        // placed still, and taken away by this commit
        changed: [
          ...of(changed, facts),
          ...side.missing.filter(({ path }) => isJudged(path) && isNamed(path)),
        ],
        concerned: concernedOf(
          changed.map(([name]) => name).filter(name => !touched.has(name)),
          concerned,
        ),
        gone: goneFrom(before, side, renamedIn(changes, side)).filter(isNamed),
        others: sameFacts,
        before: was,
        unchanged: same.length,
        idle: paths.includes(root) ? newSlips(before && namingOf(before), namingOf(side)) : [],
        held: pages.length + side.missing.filter(({ path }) => isNamed(path)).length,
        beyond: submodulesOf(changes),
        which: 'staged',
      },
      side.settings,
      {
        ...{ notEntered: [], ignored: 0, idleIgnore: [] },
        ofLayouts: paths.includes(root) ? [...side.ofLayouts, ...beyondNotice(side)] : [],
      },
      { placements: side.placements, waivers, signal },
    );
    return { report, waivers };
  } finally {
    blobs.close();
  }
}

/** Names before, of what is in the book by its new one. */
const renamedIn = (changes: readonly Pick<Change, 'path' | 'from'>[], { pages }: Side): Set<string> =>
  new Set(changes.flatMap(({ path, from }) => (from !== null && pages.has(path) ? from : [])));

/**
 * The index without what is only announced (`git add -N`): it stands there as an empty file, and no commit would hold it. The
 * rest is what is committed and what is staged on top.
 */
function withoutAnnounced(
  index: Snapshot,
  committed: Snapshot,
  changes: readonly Pick<Change, 'path' | 'from' | 'after'>[],
): Snapshot {
  const staged = new Set(changes.flatMap(({ path, after }) => (after ? path : [])));
  const gone = new Set(changes.flatMap(({ path, from, after }) => from ?? (after ? [] : path)));
  const isHeld = (name: string) => staged.has(name) || (committed.has(name) && !gone.has(name));
  return new Map([...index].filter(([name]) => isHeld(name)));
}

/** Whether a path of the book is one of those named, or lies in one. */
export function namedBy(root: string, paths: readonly string[]): (name: string) => boolean {
  const named = paths.map(file => path.relative(root, file).split(path.sep).join('/'));
  return name => named.some(at => at === '' || name === at || name.startsWith(`${at}/`));
}
