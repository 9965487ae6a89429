// no-unit-test: test/cli/actions/merge.test.ts runs the built program
import fs from 'node:fs/promises';
import { MergeError, mergeShards, type NamedShard } from '../../book/shards/merge';
import { parseShard } from '../../book/shards/text';
import type { BookReport } from '../../shared/finding';
import { named, rootOf } from '../book';
import { type Whereabouts, withResult } from '../failed-result';
import { Failure } from '../failure';
import { finish } from '../finish';
import { interruptible } from '../interrupt';
import { refuse } from '../output';
import { picturesOf } from '../pictured';
import type { MergeVerbOptions } from '../verbs/merge';
import { withWaivers } from '../waiving';
import type { ShardExtras } from './check';

/** Joins the reports of all shards, writes the report of the whole and gives the exit code. */
export function merge(reports: readonly string[], options: MergeVerbOptions): Promise<number> {
  const at: Whereabouts = { root: null };
  return withResult({ ...options, reads: reports }, at, () => joined(reports, options, at));
}

async function joined(
  reports: readonly string[],
  options: MergeVerbOptions,
  at: Whereabouts,
): Promise<number> {
  if (options.output !== undefined) await refuse(options.output, { ...options, reads: reports });
  const root = await pagedBook(options);
  const shards: NamedShard[] = [];
  for (const name of reports) {
    const shard = await shardIn(name);
    shards.push({ name, shard });
    at.place ??= (shard.common.more as ShardExtras).place;
  }
  const known = shards[0]?.shard.common.more as ShardExtras | undefined;
  const { report, common } = await interruptible(signal =>
    mergeShards(shards, { waivers: known?.waivers.waivers, signal }),
  ).catch(error => {
    throw error instanceof MergeError ? new Failure(error.message) : error;
  });
  const asked = common.named.map(at => ({ at, shown: `"${at || '.'}"` }));
  const { place, waivers } = common.more as ShardExtras;
  const waived = await withWaivers(report, waivers, { complete: common.whole }, options, '.');
  const pictures = root === null ? undefined : await pagePictures(waived, root, options);
  return finish(waived, asked, place, { ...options, reads: reports, shown: pictures });
}

/** The folder of the book whose pictures a page will show; null for what shows none. @throws Failure */
async function pagedBook({ format, book }: MergeVerbOptions): Promise<string | null> {
  const isPage = format === 'html';
  if (isPage && book === undefined)
    throw new Failure(
      'A page shows the pictures, and shards hold none. Name the folder that they lie in: --book FOLDER.',
    );
  if (!isPage && book !== undefined)
    throw new Failure('--book goes with "--format html": no other format shows pictures. Leave it out.');
  return book === undefined ? null : rootOf([named(book)]);
}

/** @throws Failure where the folder is another one */
async function pagePictures(report: BookReport, root: string, { book, jobs }: MergeVerbOptions) {
  const pictures = await picturesOf(report, root, jobs);
  const readable = pictures.filter((_, at) => !report.pictures[at].facts.unreadable);
  if (readable.length && readable.every(picture => 'trouble' in picture))
    throw new Failure(
      `--book: "${book}" holds none of the pictures that the shards read, as they were then. Name the folder of that book.`,
    );
  return pictures;
}

async function shardIn(name: string) {
  let text: string;
  try {
    text = await fs.readFile(name, 'utf8');
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    throw new Failure(
      missing
        ? `There is no file "${name}": that shard was stopped or killed, or writes elsewhere. Run it again.`
        : `"${name}" cannot be read: ${(error as Error).message}.`,
    );
  }
  try {
    return parseShard(text);
  } catch (error) {
    throw new Failure(`"${name}" ${(error as Error).message}.`);
  }
}
