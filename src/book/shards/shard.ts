// no-unit-test: test/cli/actions/merge.test.ts runs the built program with every shard, and without some
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import { version } from '../../../package.json';
import { bookFiles } from '../book-files';
import type { CheckOptions } from '../check';
import { gather } from '../gather';
import type { ReadFile } from '../judge-book';
import type { Placement } from '../layouts';
import { besides, type NamedOptions } from '../named';
import type { Searched } from '../notices';
import { withChangedOriginals } from '../outdated';
import type { Settings } from '../settings/settings';
import { type Content, contentsOf } from './contents';

/** Which part of a book is read: `index` of `count`, from 1. */
export interface ShardNumber {
  index: number;
  count: number;
}

/** One part of a book as it was read, with everything that a report of the whole needs. Plain data. */
export interface Shard {
  shard: ShardNumber;
  /** What all shards of one check have in common. */
  common: Common;
  /** Hash of `common`, hexadecimal. */
  digest: string;
  /** What each of `common.paths` held when the shard was read, in that order. */
  contents: readonly Content[];
  /** ICC profiles that the targets name, base64, by their path in the book. */
  profiles: Record<string, string>;
  files: readonly ReadFile[];
}

export interface Common {
  /** Of Evengrey: two versions may judge differently. */
  version: string;
  settings: Settings;
  /** What was named on the command line, relative to the book's folder. */
  named: string[];
  /** The whole book was named. */
  whole: boolean;
  /** Pictures of the book beside those that are named; null where no settings say that there is a book. */
  others: number | null;
  searched: Searched;
  /** Where layouts place pictures, by their path. */
  placements: [path: string, placements: readonly Placement[]][];
  /** What layouts place and is not there. */
  missing: readonly ReadFile[];
  /** Every file of the book, in its order. */
  paths: string[];
  /** Anything else that the caller wants back. */
  more: unknown;
}

/**
 * Reads one part of a book: every `count`-th file, so that parts of one folder are spread evenly. Nothing is judged:
 * what compares pictures needs all of them.
 */
export async function readShard(
  options: CheckOptions & Pick<NamedOptions, 'declared'>,
  shard: ShardNumber,
  more: unknown,
): Promise<Shard> {
  const { root, paths, settings, pool, cache, signal, onProgress } = options;
  const found = await bookFiles({ root, paths, settings, signal });
  const { files, missing, notEntered, ignored, idleIgnore, innerBooks, passedOver } = found;
  const { ofLayouts, idleLayouts, notInBook, unplaced } = found;
  const mine = files.filter((_, at) => at % shard.count === shard.index - 1);
  const contents = await contentsOf(root, files, signal);
  const realRoot = await fs.realpath(root);
  const facts = await gather(mine, { realRoot, pool, cache, signal, onProgress });
  const named = paths.map(file => path.relative(root, file).split(path.sep).join('/'));
  const { others, placements } = await besides(found, options);
  const common: Common = {
    ...{ version, settings, named, whole: paths.includes(root), missing, more },
    others: options.declared ? others.length : null,
    searched: {
      ...{ notEntered, ignored, idleIgnore, innerBooks, passedOver },
      ...{ ofLayouts, idleLayouts, notInBook, unplaced },
    },
    placements: [...placements],
    paths: files.map(file => file.path),
  };
  return {
    ...{ shard, common, digest: digestOf(common), contents },
    profiles: await profilesOf(root, settings),
    files: await withChangedOriginals(
      mine.map((file, at) => ({ path: file.path, facts: facts[at] })),
      found.all,
      { cache, signal },
    ),
  };
}

/** Two checks with the same digest ask the same: equal settings on files of equal names; `contents` tells what these hold. */
export const digestOf = (common: Common): string =>
  createHash('sha256').update(JSON.stringify(common)).digest('hex');

async function profilesOf(root: string, { targets }: Settings): Promise<Record<string, string>> {
  const named = [...new Set(targets.flatMap(({ profile }) => profile ?? []))].sort();
  const texts = await Promise.all(
    named.map(async name => [name, await fs.readFile(path.join(root, name), 'base64')]),
  );
  return Object.fromEntries(texts);
}
