// no-unit-test: test/cli/actions/merge.test.ts runs the built program with every shard, and without some
import { digestOf, type Shard } from './shard';

/** Number of the contract: goes up when old shards cannot be merged any more. */
const SCHEMA = 2;

/** A shard as it is written: JSON, a line a file, floating-point numbers to the last digit. */
export function* shardText({ shard, common, digest, contents, profiles, files }: Shard): Generator<string> {
  const head = { schema: SCHEMA, shard, digest, common, contents, profiles };
  const lines = Object.entries(head).map(([key, value]) => `${JSON.stringify(key)}:${JSON.stringify(value)}`);
  yield `{\n${lines.join(',\n')},\n"files":[`;
  for (const [at, file] of files.entries()) yield `${at ? ',' : ''}\n${JSON.stringify(file)}`;
  yield '\n]\n}\n';
}

/** What a text holds that should be a shard. @throws Error that says what it is instead, as a sentence goes on with it */
export function parseShard(text: string): Shard {
  let read: Partial<Shard & { schema: unknown }>;
  try {
    read = JSON.parse(text);
  } catch {
    throw new Error(
      'is cut short, or no JSON at all: a shard that was killed leaves such a file. Run it again',
    );
  }
  if (read === null || typeof read !== 'object' || !read.shard || !read.common || !Array.isArray(read.files))
    throw new Error('is no report of a shard. Name what "evengrey check --shard" wrote');
  if (read.schema !== SCHEMA)
    throw new Error('was written by another version of Evengrey. Run all shards with this one');
  const { shard, common, digest, contents, profiles, files } = read as Shard;
  if (digestOf(common) !== digest || contents?.length !== common.paths.length)
    throw new Error('was changed after it was written. Run that shard again');
  return { shard, common, digest, contents, profiles, files };
}
