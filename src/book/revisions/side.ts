// no-unit-test: test/book/comparison/compare.test.ts compares books through it
import type { PictureFacts } from '../../shared/picture';
import { compare, discover } from '../discovery/discover';
import { obstructed } from '../gather';
import type { Blobs } from '../git/blobs';
import type { Entry, Snapshot } from '../git/snapshot';
import { type JudgeBookOptions, type JudgedBook, judgeBook, type ReadFile } from '../judge-book';
import type { BookLayouts } from '../layouts';
import { type LaidOut, laidOut } from '../layouts/laid-out';
import { loadSettings } from '../settings/load';
import type { Problem } from '../settings/problem';
import type { Settings } from '../settings/settings';
import { readWaivers } from '../waivers/file';
import type { Waiver } from '../waivers/key';
import { GitTree } from './git-tree';
import { layoutsIn } from './layouts';
import { contentsOf, filesOf } from './source';

/** Which of the books that git holds it is: of two that are compared, or the one of the index. */
export type Which = 'before' | 'after' | 'staged';

/** The settings of a revision, or its waivers, cannot be used. */
export class RevisionSettingsError extends Error {
  override name = 'RevisionSettingsError';
  constructor(
    readonly which: Which,
    readonly problems: readonly Problem[],
  ) {
    super('The settings have problems.');
  }
}

/** A book as a revision, or the index, holds it. */
export interface Side {
  settings: Settings;
  waivers: readonly Waiver[];
  snapshot: Snapshot;
  tree: GitTree;
  /** Its pictures, by path: regular files, also those that a link leads to, or that lie behind one. */
  pages: ReadonlyMap<string, Entry>;
  /** Where layouts place them. */
  placements: LaidOut['placements'];
  /** What layouts place and is not there, and links that lead to nothing. */
  missing: LaidOut['missing'];
  /** Pictures that it holds beside the book, since layouts place others. */
  notInBook: LaidOut['notInBook'];
  /** Pictures that it holds and places, and that settings or ignore files leave out. */
  leftOut: LaidOut['leftOut'];
  /** Pictures that layouts place and that lie in a submodule: what they are git does not know here. */
  beyond: ReadonlySet<string>;
  /** Lines of layouts that take in a text which is not there. */
  notThere: BookLayouts['notThere'];
  /** What its layouts have made of it, in sentences. */
  ofLayouts: LaidOut['notices'];
}

/**
 * Finds the settings and the pictures of a snapshot; `adjust` makes of its settings what was asked for on the spot.
 * @throws RevisionSettingsError, NotInCloneError
 */
export async function sideOf(
  root: string,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small' | 'head'>,
  adjust: (settings: Settings) => Settings,
  which: Which,
): Promise<Side> {
  const source = filesOf(root, snapshot, blobs);
  const { settings, problems } = await loadSettings(root, { source });
  source.complete();
  if (!settings) throw new RevisionSettingsError(which, problems);
  return withSettings(root, adjust(settings), snapshot, blobs, which);
}

/** The same by other settings. @throws RevisionSettingsError where its waivers cannot be read, NotInCloneError */
export async function withSettings(
  root: string,
  settings: Settings,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small' | 'head'>,
  which: Which,
): Promise<Side> {
  const source = filesOf(root, snapshot, blobs);
  const { waivers, problems } = await readWaivers(root, { source });
  source.complete();
  if (problems.length) throw new RevisionSettingsError(which, problems);
  const tree = new GitTree(snapshot, blobs);
  const { files: found } = await discover({ root, paths: [root], settings, tree });
  const layouts = await layoutsIn(root, settings, tree, blobs);
  const beyond = await beyondOf(layouts, tree);
  const { files, ...laid } = laidOut(found, layouts, { root, paths: [root], settings, beyond });
  const { notThere } = layouts;
  const pages = await contentsOf(
    files.map(({ path }) => path),
    tree,
  );
  const missing = [
    ...laid.missing,
    ...files.flatMap(({ path, obstacle }) => (obstacle ? { path, facts: [obstructed(obstacle)] } : [])),
  ];
  const { placements, notInBook, leftOut, notices: ofLayouts } = laid;
  return {
    settings,
    waivers,
    snapshot,
    tree,
    pages,
    placements,
    missing,
    notInBook,
    leftOut,
    beyond,
    notThere,
    ofLayouts,
  };
}

async function beyondOf({ placements }: BookLayouts, tree: GitTree): Promise<Set<string>> {
  const beyond = new Set<string>();
  for (const { picture } of placements) if (await tree.isBeyond(picture)) beyond.add(picture);
  return beyond;
}

/**
 * Judges the pictures of a side whose facts are known, by path. `partial`: there are more, so nothing is said that
 * depends on them.
 */
export function judgeSide(
  { settings, waivers, pages, placements, missing }: Side,
  factsOf: (path: string) => PictureFacts[] | null,
  { partial, changed, signal }: Pick<JudgeBookOptions, 'partial' | 'changed' | 'signal'>,
): Promise<JudgedBook> {
  const files: ReadFile[] = [...pages.keys()].flatMap(path => {
    const facts = factsOf(path);
    return facts ? [{ path, facts }] : [];
  });
  files.push(...missing);
  files.sort((x, y) => compare(x.path, y.path));
  return judgeBook(files, settings, { partial, changed, placements, waivers, signal });
}
