// no-unit-test: test/cli/actions/merge.test.ts runs the built program with every shard, and without some
import { readPressProfile } from '../../print';
import { count, list } from '../../rules/words';
import type { BookReport } from '../../shared/finding';
import type { PressProfile } from '../../shared/target';
import { reportOf } from '../check';
import { compare } from '../discovery/discover';
import { type JudgeBookOptions, judgeBook, type ReadFile } from '../judge-book';
import { saidAlone } from '../named';
import { reportOfChanged } from '../revisions/partial';
import type { Settings } from '../settings/settings';
import { type Content, differenceOf } from './contents';
import type { Common, Shard } from './shard';

/** Shards that do not make up one check. The message says what is missing, and what to do. */
export class MergeError extends Error {
  override name = 'MergeError';
}

/** A shard and the file that it came from, as it was named. */
export interface NamedShard {
  name: string;
  shard: Shard;
}

/**
 * The report of the whole book: everything is judged anew from what the shards have read, so that it is what one run
 * would say. @throws MergeError where a shard is missing, doubled, or of another check; the signal's reason
 */
export async function mergeShards(
  shards: readonly NamedShard[],
  how: Pick<JudgeBookOptions, 'waivers' | 'signal'> = {},
): Promise<{ report: BookReport; common: Common }> {
  const files = inOrder(shards);
  const { common, profiles } = shards[0].shard;
  const settings = await withProfiles(common.settings, profiles);
  const placements = new Map(common.placements);
  return { report: await judged(files, settings, common, { ...how, placements }), common };
}

/** As one run without anything remembered would judge it. */
async function judged(
  files: readonly ReadFile[],
  settings: Settings,
  { whole, others, named, searched }: Common,
  how: JudgeBookOptions,
): Promise<BookReport> {
  if (!whole && others !== null) {
    const part = { changed: files, others: others ? null : new Map(), unchanged: others, which: 'named' };
    return reportOfChanged(part, settings, searched, how);
  }
  const report = reportOf(await judgeBook(files, settings, how), searched, settings, whole);
  return whole ? report : saidAlone(report, named);
}

function inOrder(shards: readonly NamedShard[]): ReadFile[] {
  const [first] = shards;
  if (!first) throw new MergeError('Name the reports of all shards.');
  const { count: many } = first.shard.shard;
  const foreign = shards.find(
    ({ shard }) => shard.digest !== first.shard.digest || shard.shard.count !== many,
  );
  if (foreign)
    throw new MergeError(
      `"${foreign.name}" is of another check than "${first.name}": ${difference(first.shard, foreign.shard)}. Merge only shards of one run.`,
    );
  refuseOtherContents(shards);
  const byIndex = new Map<number, NamedShard>();
  for (const named of shards) {
    const { index } = named.shard.shard;
    const double = byIndex.get(index);
    if (double)
      throw new MergeError(
        `"${double.name}" and "${named.name}" are both shard ${index} of ${many}. Name each once.`,
      );
    byIndex.set(index, named);
  }
  const missing = Array.from({ length: many }, (_, i) => i + 1).filter(index => !byIndex.has(index));
  if (missing.length) throw new MergeError(missed(missing, many));
  const files = new Map(shards.flatMap(({ shard }) => shard.files.map(file => [file.path, file] as const)));
  const { paths, missing: placed } = first.shard.common;
  const read = paths.map(path => {
    const file = files.get(path);
    if (!file) throw new MergeError(`No shard holds "${path}", though the book does. Run the shards again.`);
    return file;
  });
  return [...read, ...placed].sort((x, y) => compare(x.path, y.path));
}

/** A job that was run again on another revision, or kept an old result, would give a report that is true of neither. */
function refuseOtherContents(shards: readonly NamedShard[]): void {
  const { paths } = shards[0].shard.common;
  // of each picture the shard that knows most of it: not all of them may lie in the repository
  const known: { content: Content; name: string }[] = [];
  for (const { name, shard } of shards)
    for (const [at, content] of shard.contents.entries()) {
      const first = known[at];
      const difference = first && differenceOf(content, first.content);
      if (difference)
        throw new MergeError(
          `"${name}" is of another state of the book than "${first.name}": "${paths[at]}" ${difference}. Read all shards of one revision, and merge those.`,
        );
      if (!first?.content[1]) known[at] = { content, name };
    }
}

function missed(missing: readonly number[], many: number): string {
  const which = missing.map(String);
  const shards = missing.length === 1 ? `Shard ${which[0]}` : `Shards ${list(which, 8)}`;
  return `${shards} of ${many} ${missing.length === 1 ? 'is' : 'are'} missing: stopped or killed, or not named. Run "evengrey check --shard ${missing[0]}/${many}" again, and merge ${count(many, 'report')}.`;
}

/** Where two checks part, by what a person would look at first. */
function difference(one: Shard, other: Shard): string {
  if (one.shard.count !== other.shard.count)
    return `one of ${other.shard.count} shards, not of ${one.shard.count}`;
  const differs = (key: keyof Common) =>
    JSON.stringify(one.common[key]) !== JSON.stringify(other.common[key]);
  if (differs('version')) return 'written by another version of Evengrey';
  if (differs('settings')) return 'with other settings';
  if (differs('paths')) return 'of other pictures';
  if (waivers(one) !== waivers(other)) return 'with other waivers, or other reasons for them';
  const ofAnotherState = differs('placements') || differs('missing') || differs('searched');
  if (ofAnotherState) return 'of another state of the book: other layouts, ignore files or files beside it';
  return 'of another folder, or with other options';
}

/** What those who read shards have noted of waivers, whatever it is. */
const waivers = ({ common }: Shard): string | undefined =>
  JSON.stringify((common.more as { waivers?: unknown } | null)?.waivers);

/** Profiles are read anew: they cannot be written down as what they do. */
async function withProfiles(settings: Settings, profiles: Shard['profiles']): Promise<Settings> {
  const read = new Map<string, PressProfile>();
  for (const [name, bytes] of Object.entries(profiles))
    read.set(name, await readPressProfile(Buffer.from(bytes, 'base64')));
  const targets = settings.targets.map(target => {
    const profile = target.profile === null ? undefined : read.get(target.profile);
    return profile ? { ...target, pressProfile: profile } : target;
  });
  // parts find their targets by name, so nothing else holds one
  return { ...settings, targets };
}
