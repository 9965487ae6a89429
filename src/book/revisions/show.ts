// no-unit-test: test/cli/actions/compare.test.ts has the built program show what changed
import type { Comparison } from '../../shared/comparison';
import type { Raster } from '../../shared/reader-protocol';
import { Blobs } from '../git/blobs';
import { NotInCloneError } from '../git/git';
import { type Hand, withContents } from '../git/handed';
import { openRepository, type Repository } from '../git/repository';
import { sizesOf } from '../git/sizes';
import { snapshotOf, treeOf } from '../git/snapshot';
import type { Sized } from '../git/stretches';
import { inLanes } from '../lanes';
import type { Pool } from '../pool';
import { GitTree } from './git-tree';
import { contentsOf } from './source';

/** A picture to look at, or why it cannot be. */
export type ShownRaster = Raster | { trouble: string };

/** Pictures of a comparison to look at, by `shownKey`. */
export type ShownRasters = ReadonlyMap<string, ShownRaster>;

export const shownKey = (side: 'base' | 'head', file: string, page: number) => `${side} ${page} ${file}`;

/** Long edges in pixels: what changed, and what stands beside it. */
const LARGE = 960;
const SMALL = 240;

const READING = 4;

/** One picture to be read: its content's name in git, page, and long edge in pixels. */
export interface RasterWish {
  key: string;
  oid: string;
  /** In the book's folder. */
  path: string;
  page: number;
  edge: number;
}

/** One that has to be found first. */
interface Wish extends Omit<RasterWish, 'oid'> {
  side: 'base' | 'head';
}

/** Reads what a page of a comparison shows: what changed before and after, and its neighbours as they are after. */
export async function showComparison(
  root: string,
  { base, head, changes }: Comparison,
  { pool, signal }: { pool: Pick<Pool, 'raster'>; signal?: AbortSignal },
): Promise<ShownRasters> {
  const repository = await openRepository(root);
  const wishes = new Map<string, Wish>();
  const wish = (side: Wish['side'], path: string | null, page: number, edge: number) => {
    if (path === null) return;
    const key = shownKey(side, path, page);
    const known = wishes.get(key);
    if (!known || known.edge < edge) wishes.set(key, { side, key, path, page, edge });
  };
  for (const { path: file, from, kind, neighbours, pages } of changes) {
    for (const { page, before, after } of pages) {
      // of one content one picture
      if (before && kind !== 'renamed') wish('base', from ?? file, page, LARGE);
      if (after) wish('head', file, page, LARGE);
    }
    if (kind === 'deleted' || kind === 'mode') continue;
    for (const name of [neighbours.before, neighbours.after, ...neighbours.beside])
      wish('head', name, 1, SMALL);
  }
  const found: RasterWish[] = [];
  for (const [side, commit] of [
    ['base', treeOf(base)],
    ['head', head.commit],
  ] as const) {
    const of = [...wishes.values()].filter(wish => wish.side === side);
    const oids = await oidsAt(
      repository,
      commit,
      of.map(({ path }) => path),
    );
    for (const wish of of) {
      const oid = oids.get(wish.path);
      if (oid) found.push({ ...wish, oid });
    }
  }
  return rastersOf(found, repository, { pool, signal });
}

/** What git calls pictures that a commit holds, by the names that the book has for them, also through links. */
export async function oidsAt(
  repository: Repository,
  commit: string,
  paths: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const blobs = new Blobs(repository);
  try {
    const tree = new GitTree(await snapshotOf(repository, commit), blobs);
    const contents = await contentsOf(new Set(paths), tree);
    return new Map([...contents].map(([path, { oid }]) => [path, oid]));
  } finally {
    blobs.close();
  }
}

/** Reads pictures straight from git, by `key`; each content is unpacked once, whatever is wished of it. */
export async function rastersOf(
  wishes: readonly RasterWish[],
  repository: Repository,
  { pool, signal }: { pool: Pick<Pool, 'raster'>; signal?: AbortSignal },
): Promise<ShownRasters> {
  const sizes = await sizesOf(
    repository,
    wishes.map(({ oid }) => oid),
    signal,
  );
  const shown = new Map<string, ShownRaster>();
  const wished = new Map<string, RasterWish[]>();
  for (const wish of wishes) wished.set(wish.oid, [...(wished.get(wish.oid) ?? []), wish]);
  const told = (oid: string, error: unknown) => {
    signal?.throwIfAborted();
    for (const { key } of wished.get(oid)!) shown.set(key, troubleOf(error));
  };
  const contents = [...wished].flatMap(([oid, [{ path }]]) => {
    const size = sizes.get(oid);
    if (size === undefined) told(oid, new NotInCloneError(null));
    return size === undefined ? [] : { oid, path, size };
  });
  const blobs = new Blobs(repository);
  const show = (hand: Hand) => async (content: Sized) => {
    const looking = hand(content, async had => {
      if (had.lost) throw new Error(had.lost.unreadable?.text ?? 'It cannot be read.');
      for (const { key, page, edge } of wished.get(content.oid)!)
        shown.set(key, await pool.raster(had, page, edge, signal).catch(troubleOf));
      signal?.throwIfAborted();
    });
    await looking.catch(error => told(content.oid, error));
  };
  try {
    await withContents(contents, { repository, blobs, signal }, hand =>
      inLanes(contents, READING, show(hand)),
    );
  } finally {
    blobs.close();
  }
  return shown;
}

const troubleOf = (error: unknown): ShownRaster => ({
  trouble: error instanceof Error ? error.message : String(error),
});
