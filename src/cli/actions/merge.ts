// no-unit-test: test/cli/actions/merge.test.ts runs the built program
import fs from 'node:fs/promises';
import { MergeError, mergeShards, type NamedShard } from '../../book/shards/merge';
import { parseShard } from '../../book/shards/text';
import { Failure } from '../failure';
import { finish } from '../finish';
import { interruptible } from '../interrupt';
import { refuse } from '../output';
import type { MergeVerbOptions } from '../verbs/merge';
import { withWaivers } from '../waiving';
import type { ShardExtras } from './check';

/** Joins the reports of all shards, writes the report of the whole and gives the exit code. */
export async function merge(reports: readonly string[], options: MergeVerbOptions): Promise<number> {
  if (options.output !== undefined) await refuse(options.output);
  const shards: NamedShard[] = [];
  for (const name of reports) shards.push({ name, shard: await shardIn(name) });
  const { report, common } = await interruptible(signal => mergeShards(shards, signal)).catch(error => {
    throw error instanceof MergeError ? new Failure(error.message) : error;
  });
  const named = common.named.map(at => ({ at, shown: `"${at || '.'}"` }));
  const { place, waivers } = common.more as ShardExtras;
  return finish(await withWaivers(report, waivers, common.whole, options, '.'), named, place, options);
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
