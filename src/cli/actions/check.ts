import path from 'node:path';
import { checkBook } from '../../book/check';
import { checkNamed } from '../../book/named';
import { type Overrides, override } from '../../book/overrides';
import { checkSince } from '../../book/revisions/since';
import { checkStaged } from '../../book/revisions/staged';
import type { Settings } from '../../book/settings/settings';
import { readShard, type ShardNumber } from '../../book/shards/shard';
import { shardText } from '../../book/shards/text';
import type { Waiver } from '../../book/waivers/key';
import type { Place } from '../../report/place';
import type { BookReport } from '../../shared/finding';
import { named, oneBook, rootOf, settingsOf, shown } from '../book';
import { conditionsOf, somethingToPrint } from '../conditions';
import { type Resulting, type Whereabouts, withResult } from '../failed-result';
import { EXIT, Failure } from '../failure';
import { finish } from '../finish';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { picturesOf } from '../pictured';
import { placeOf } from '../place';
import { Progress } from '../progress';
import { withReading } from '../reading';
import { revisionFailure } from '../revision-failure';
import type { CheckVerbOptions } from '../verbs/check';
import { type Waivers, waiversOf, withWaivers } from '../waiving';

/** Checks a book, writes the report and gives the exit code. */
export async function check(names: readonly string[], options: CheckVerbOptions): Promise<number> {
  const at: Whereabouts = { root: null };
  const { output, settings, waivers } = options;
  // a shard is JSON or nothing
  const format = options.shard ? 'json' : options.format;
  const result: Resulting = { format, output, reads: [settings, waivers] };
  return withResult(result, at, () => checkAt(names, options, result, at));
}

async function checkAt(
  names: readonly string[],
  options: CheckVerbOptions,
  result: Resulting,
  at: Whereabouts,
): Promise<number> {
  const conditions = conditionsOf(options);
  if (result.output !== undefined) await refuse(result.output, result);
  const paths = (names.length ? names : ['.']).map(named);
  const root = await rootOf(paths);
  at.root = root;
  if (options.settings === undefined) await oneBook(root, paths, 'checked');
  const { settings, files } = await settingsOf(root, options.settings, 'checked');
  const adjust = (some: Settings) => adjusted(some, conditions);
  const waivers = await waiversOf(root, options);
  const asked = { root, paths, settings, declared: files.length > 0, adjust, waivers };
  const place = await placeOf(root, files[0]);
  if (options.shard) return writeShard(asked, options.shard, { place, waivers }, options, result);
  const { report: judged, waivers: own } = await readAndJudge(asked, options);
  const complete = paths.includes(root) && !judged.scope;
  const again = async (others: readonly Waiver[]) =>
    (await readAndJudge({ ...asked, waivers: { ...waivers, waivers: [...others] } }, options)).report;
  const present = { ...waivers, waivers: [...own] };
  const report = await withWaivers(judged, present, { complete, again }, options, root);
  // that none changed is an answer; that there is none, or none any more, is not
  const { held = 1, gone = [] } = judged.scope ?? {};
  const noneChanged = (options.since !== undefined || options.staged) && held > gone.length;
  const asking = noneChanged
    ? []
    : paths.map(file => ({ at: path.relative(root, file), shown: shown(file) }));
  const pictures = options.format === 'html' ? await picturesOf(report, root, options.jobs) : undefined;
  const { maxWarnings, showWaived } = options;
  return finish(report, asking, place, { ...result, maxWarnings, showWaived, shown: pictures });
}

interface Book {
  root: string;
  paths: readonly string[];
  settings: Settings;
  /** Settings were found: the root is a book, not only what the named paths have in common. */
  declared: boolean;
  /** With the conditions that were asked for on the spot. */
  adjust: (settings: Settings) => Settings;
  waivers: Waivers;
}

function readAndJudge(
  { root, paths, settings, declared, adjust, waivers: { waivers } }: Book,
  options: CheckVerbOptions,
): Promise<{ report: BookReport; waivers: readonly Waiver[] }> {
  const { since, staged, whole = false } = options;
  const some = !paths.includes(root);
  if (whole && since === undefined && !staged && !some)
    throw new Failure(
      '--whole goes with --since, --staged or named pictures: without them the whole book is checked anyway.',
    );
  return interruptible(signal =>
    withReading(root, options, async ({ pool, cache }) => {
      const progress = new Progress(process.stderr);
      const reading = {
        ...{ root, paths, waivers, pool, cache, signal },
        onProgress: (done: number, total: number, file: string) => progress.tell(done, total, file),
      };
      try {
        const settingsNamed = options.settings !== undefined;
        if (staged) {
          // a commit will not hold what lies in the folder alone; what is written anew keeps all that is there
          const own = options.waivers !== undefined || options.waive ? waivers : null;
          return await checkStaged({
            ...{ ...reading, settings: adjust(settings), waivers: own },
            ...{ settingsNamed, adjust, whole },
          });
        }
        const how = { ...reading, settings: adjust(settings) };
        const report =
          since !== undefined
            ? await checkSince({ ...how, since, whole, settingsNamed, adjust })
            : some
              ? await checkNamed({ ...how, declared, whole })
              : await checkBook(how);
        return { report, waivers };
      } catch (error) {
        throw revisionFailure(error, root, 'checked');
      } finally {
        progress.end();
      }
    }),
  );
}

/** What a shard hands to `merge` beside what was read. */
export interface ShardExtras {
  place: Place;
  waivers: Waivers;
}

/** What is read is no verdict yet, so that it fails nothing: `merge` does. */
async function writeShard(
  { root, paths, settings, declared, adjust }: Book,
  shard: ShardNumber,
  more: ShardExtras,
  options: CheckVerbOptions,
  result: Resulting,
): Promise<number> {
  if (options.formatAsked && options.format !== 'json')
    throw new Failure(
      '--shard writes JSON for "evengrey merge", which writes the report in any format. Leave --format out.',
    );
  const read = await interruptible(signal =>
    withReading(root, options, async ({ pool, cache }) => {
      const progress = new Progress(process.stderr);
      const onProgress = (done: number, total: number, file: string) => progress.tell(done, total, file);
      try {
        return await readShard(
          { root, paths, settings: adjust(settings), declared, pool, cache, signal, onProgress },
          shard,
          more,
        );
      } finally {
        progress.end();
      }
    }),
  );
  await writeResult(shardText(read), result.output, result);
  return EXIT.clean;
}

/** @throws Failure where a paper or a light is asked for and nobody said a process */
function adjusted(settings: Settings, conditions: Overrides): Settings {
  const targets = override(settings.targets, conditions);
  somethingToPrint(targets, conditions);
  return { ...settings, targets };
}
