import { groundsOn } from '../../rules/targets';
import { count, list } from '../../rules/words';
import type { ComparedRevision, Comparison } from '../../shared/comparison';
import type { PictureFacts } from '../../shared/picture';
import type { Target } from '../../shared/target';
import type { FactsCache } from '../cache/cache';
import { doubtNotices } from '../doubts';
import { forecastAhead } from '../forecasts';
import { Blobs } from '../git/blobs';
import { changesBetween, changesOfTrees } from '../git/changes';
import { treeOfFolder } from '../git/folder';
import { formerFolder } from '../git/former-folder';
import { commitsOf, mergeBase, openWithEnds } from '../git/revision';
import { sizesOf } from '../git/sizes';
import { snapshotBefore, snapshotOf, treeOf } from '../git/snapshot';
import { idleNotice, slipsOf } from '../idle-settings';
import type { JudgedBook } from '../judge-book';
import { type Overrides, override } from '../overrides';
import { standings } from '../pictures';
import type { Pool } from '../pool';
import { knownFacts } from '../revisions/known';
import { namingOf, newSlips } from '../revisions/new-slips';
import { contentsToRead, pageChanges, unchangedPages } from '../revisions/page-changes';
import { type NamedContent, readBlobs } from '../revisions/read';
import { calledNow } from '../revisions/rearranged';
import {
  missingWaivers,
  rulesOff,
  rulesStricter,
  rulesWeaker,
  settingsChanges,
} from '../revisions/settings-changes';
import { judgeSide, RevisionSettingsError, type Side, sideOf, withSettings } from '../revisions/side';
import { beyondNotice, submodulesOf, toldOf } from '../revisions/told';
import type { Settings } from '../settings/settings';
import { type Split, splitWaived } from '../waivers/apply';
import { WAIVERS_FILE } from '../waivers/file';
import { keyOf } from '../waivers/key';
import { staleWords } from '../waivers/notices';
import { joined } from './join';
import { pixelsAlike } from './pixels';
import { settingsEffect } from './settings-effect';
import { stillIn, unlooked } from './unlooked';
import { waivedSince } from './waived-since';

export interface CompareOptions {
  /** The book's folder, absolute. */
  root: string;
  /** Revisions, by any name that git knows. */
  base: string;
  /** Null: the current commit. `FOLDER`: what lies in the book's folder, committed or not. */
  head: string | typeof FOLDER | null;
  /** Compare with where the two parted, not with `base` itself. */
  fromMergeBase: boolean;
  /** Go before the settings of either revision. */
  conditions: Overrides;
  /** Read the unchanged pictures too, where they are not known and the settings are what they were: the set is judged whole. */
  whole: boolean;
  pool: Pick<Pool, 'factsOf' | 'pixels'>;
  cache: FactsCache | null;
  signal?: AbortSignal;
  onProgress?: (done: number, total: number) => void;
}

/** Stands for what lies in the book's folder, as if all of it were committed. */
export const FOLDER = Symbol('folder');

/**
 * Compares a book at two revisions, each with the settings that it had then. Only contents that differ are read; what
 * the unchanged ones are is taken from the cache if all of them are there, else nothing is said of the set; where the
 * settings changed what pictures are judged by, all are read.
 * @throws GitError, RevisionSettingsError; the signal's reason when cancelled
 */
export async function compareRevisions(options: CompareOptions): Promise<Comparison> {
  const { root, cache, pool, signal, onProgress } = options;
  const ofFolder = options.head === FOLDER;
  const named = options.head === FOLDER ? null : options.head;
  const names = [options.base, named ?? 'HEAD'] as const;
  const { repository: opened, ends } = await openWithEnds(root, ...names);
  const [asked, headCommit] = ends ? [ends.base, ends.head] : await commitsOf(opened, names);
  const parted = () => ends?.parted ?? mergeBase(opened, asked, headCommit, ITSELF);
  const baseCommit = options.fromMergeBase ? await parted() : asked;
  const folder = ofFolder ? await treeOfFolder(opened, { signal }) : null;
  const repository = folder?.repository ?? opened;
  const headTree = folder?.tree ?? headCommit;
  const adjust = (settings: Settings) => ({
    ...settings,
    targets: override(settings.targets, options.conditions),
  });
  const blobs = new Blobs(repository);
  try {
    const [within, after] = await Promise.all([
      changesBetween(repository, baseCommit, headTree),
      snapshotOf(repository, headTree),
    ]);
    const isFirst = after.size > 0 && snapshotBefore(after, within.changes).size === 0;
    const folderThen = isFirst ? await formerFolder(repository, baseCommit, headTree) : null;
    const { changes, renamesFollowed } =
      folderThen !== null
        ? await changesOfTrees(repository, treeOf({ commit: baseCommit, folderThen }), `${headTree}:./`)
        : within;
    const head = await sideOf(root, after, blobs, adjust, 'after');
    const before = snapshotBefore(after, changes);
    const { base, borrowed } = await baseSide(root, before, blobs, head, adjust);
    const pages = pageChanges(changes, base, head);
    const reading = { repository, blobs, pool, cache, signal, onProgress };
    const contents = pages.flatMap(contentsToRead);
    const isKnown = ({ oid }: NamedContent) => Boolean(cache?.blobFacts(oid));
    // of a clone without all contents git tells no size after the first that is missing: those that are read come first
    const inTurn = [...contents.filter(one => !isKnown(one)), ...contents.filter(isKnown)];
    const sizes = await sizesOf(
      repository,
      inTurn.map(({ oid }) => oid),
      signal,
    );
    const read = await readBlobs(contents, { ...reading, sizes, onRead: forecaster([base, head]) });
    const alike = await pixelsAlike(pages, read, { ...reading, sizes });
    const same = unchangedPages(base, head, pages);
    let known = await knownFacts(repository, same, cache);
    const paths = same.map(([path]) => path);
    const isGone = !head.snapshot.size;
    const oneSided = isGone || !base.snapshot.size;
    const settings = oneSided ? [] : settingsChanges(base, head, paths, calledNow(pages));
    const off = oneSided ? [] : rulesOff(base.settings, head.settings);
    const weaker = oneSided ? [] : rulesWeaker(base.settings.rules, head.settings.rules);
    const stricter = oneSided ? [] : rulesStricter(base.settings.rules, head.settings.rules);
    // by other settings the unchanged are judged otherwise, and nobody knows how who has not looked at them
    if (!known && (options.whole || settings.length))
      known = await readBlobs(
        same.map(([path, { oid }]) => ({ oid, path })),
        reading,
      );

    const factsOn =
      (side: Side) =>
      (path: string): PictureFacts[] | null => {
        const { oid } = side.pages.get(path)!;
        return read.get(oid) ?? known?.get(oid) ?? null;
      };
    const other = pages.filter(({ before, after }) => after && before?.oid !== after.oid);
    const changed = new Set(other.map(({ path }) => path));
    const judge = async (side: Side) => {
      const how = { partial: !known, changed: side === head ? changed : undefined, signal };
      const judged = await judgeSide(side, factsOn(side), how);
      return splitWaived(judged, side.waivers);
    };
    const still = await stillIn(head, base.pages.keys());
    const { notices: outOfSight, ...outOf } = unlooked(changes, base, head, still);
    const idle = newSlips(namingOf(base), namingOf(head));
    const judged = { before: await judge(base), after: await judge(head) };
    return joined({
      base: {
        ...revisionOf(options.base, baseCommit, false, base, judged.before),
        ...(folderThen !== null && { folderThen }),
      },
      isFirst: isFirst && folderThen === null,
      head: revisionOf(named, headTree, ofFolder, head, judged.after),
      mergeBase: options.fromMergeBase && baseCommit !== asked,
      sides: { base, head },
      still,
      judged,
      ...{ pages, alike, sizes },
      unread: known ? 0 : same.length,
      beyond: submodulesOf(changes),
      waived: waivedSince(missingWaivers(head.waivers, base.waivers), judged.after),
      settings: {
        changes: settings,
        forecasts: settings.length ? settingsEffect({ base, head }, judged, new Set(paths)) : [],
        ...(off.length && { off }),
        ...(weaker.length && { weaker }),
        ...(stricter.length && { stricter }),
      },
      notices: [
        ...borrowed,
        ...(isGone ? [GONE] : []),
        ...(renamesFollowed ? [] : [NO_RENAMES]),
        ...outOfSight,
        ...(await toldOf(changes, base, head)),
        ...beyondNotice(head),
        ...idle.map(idleNotice),
        ...leftOut(same, known),
        ...waivedNotice(judged.after),
        ...(known ? staleNotice(judged) : []),
        ...head.settings.targets.flatMap(doubtNotices),
      ],
      slips: slipsOf(idle),
      unlooked: outOf,
    });
  } finally {
    blobs.close();
    await folder?.close();
  }
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

const ITSELF = 'Or compare with the revision itself: --no-merge-base.';
const GONE = "There is nothing in the book's folder any more.";
const NO_RENAMES =
  'Some contents are not in this clone, so a picture that was renamed and changed is told as one deleted and one added.';

/** Of the unchanged pictures those that could not be compared with the others: one of them must not stop the rest. */
function leftOut(
  same: readonly (readonly [path: string, { oid: string }])[],
  known: ReadonlyMap<string, readonly PictureFacts[]> | null,
): string[] {
  const names = same
    .filter(([, { oid }]) => known?.get(oid)?.every(({ unreadable }) => unreadable))
    .map(([path]) => path);
  if (!names.length) return [];
  const one = names.length === 1;
  return [
    `${list(names, NAMED)} did not change and cannot be read, so the others were compared without ${one ? 'it' : 'them'}.`,
  ];
}

/** So many of them are named. */
const NAMED = 5;

function waivedNotice({ pictures, waived }: Split): string[] {
  const many = pictures.reduce((sum, picture) => sum + (picture.waived?.length ?? 0), waived.length);
  if (!many) return [];
  return [
    `${count(many, 'finding')} ${many === 1 ? 'is' : 'are'} waived by ${WAIVERS_FILE} and ${many === 1 ? 'does' : 'do'} not count.`,
  ];
}

/** Waivers that the change leaves behind, or brings, and that waive nothing. */
function staleNotice({ before, after }: { before: Split; after: Split }): string[] {
  const were = new Set(before.unused.map(keyOf));
  const stale = after.unused.filter(waiver => !were.has(keyOf(waiver)));
  return stale.length ? [`Since this change ${staleWords(WAIVERS_FILE, stale, after)}`] : [];
}

/** A base whose settings are broken was judged by nobody: today's settings are the nearest that there is. */
async function baseSide(
  root: string,
  snapshot: Side['snapshot'],
  blobs: Blobs,
  head: Side,
  adjust: (settings: Settings) => Settings,
): Promise<{ base: Side; borrowed: string[] }> {
  try {
    return { base: await sideOf(root, snapshot, blobs, adjust, 'before'), borrowed: [] };
  } catch (error) {
    if (!(error instanceof RevisionSettingsError)) throw error;
    return {
      base: await withSettings(root, head.settings, snapshot, blobs, 'before'),
      borrowed: [
        `The settings before have ${error.problems.length === 1 ? 'a problem' : `${error.problems.length} problems`}, so the pictures before are judged by the settings after. ${error.problems.map(({ file, line, message }) => `${file}:${line}: ${message}`).join(' ')}`,
      ],
    };
  }
}

const revisionOf = (
  asked: string | null,
  commit: string,
  folder: boolean,
  side: Side,
  judged: JudgedBook,
): ComparedRevision => ({
  asked,
  commit,
  folder,
  targets: side.settings.targets,
  pictures: side.pages.size + side.missing.length,
  findings: judged.findings,
  grounds: Object.fromEntries(
    side.settings.targets.map(target => [target.name, groundsOn(target, judged.pictures)]),
  ),
});
