import fs from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { inLanes } from '../book/lanes';
import type { Conversion, ConvertReport } from '../shared/conversion';
import type { RemedyWish } from '../shared/remedy';
import { carryOut, type Means, type Undertaking } from './carry-out';
import { keepOf, type OpenKeep, originalsIn } from './keep/place';
import { sweep } from './keep/temporary';
import { withKeep } from './keep/with-keep';
import { lostToneNotices, lostTones } from './lost-tone';
import { otherProfilesNotice } from './other-profiles';
import { failed } from './outcomes';
import { plan } from './plan';
import { linesIn } from './plan/placing';
import type { Decision } from './plan/types';
import { endedWaivers } from './relinking/ended-waivers';
import { relinkToResults } from './relinking/to-results';
import { Results } from './results';
import { type Selected, select } from './select';
import { type Converting, settled } from './settled';
import { endOf, troubleOf } from './trouble';

/**
 * Converts the pictures of a book that are meant. What fails costs only that picture; a full disk ends the work in good
 * order, and so does cancelling: everything is whole then, nothing half-written is left, and the report says what is
 * done. Done again, it does nothing. The converters are closed at the end.
 * @throws RemedyError where another run is at work on the book, or the originals cannot be kept
 */
export async function convertPictures(how: Converting): Promise<ConvertReport> {
  const folders = new Set<string>();
  try {
    if (how.dryRun || how.place.kind !== 'in-place') return await convertAll(how, null, folders);
    return await withKeep(how.root, notKept, keep => convertAll(how, keep, folders));
  } finally {
    await how.converters.close();
    // a converter that was stopped in the middle leaves what it had begun
    await Promise.all([...folders].map(sweep));
  }
}

const notKept = (folder: string, code: string) =>
  `Originals cannot be kept in "${folder}" (${code}), so nothing was changed. Make room or give yourself the right to write there, or have the results written beside the pictures.`;

async function convertAll(
  how: Converting,
  keep: OpenKeep | null,
  folders: Set<string>,
): Promise<ConvertReport> {
  const results = new Results(how.memory);
  const notices: string[] = [];
  const conversions: Conversion[] = [];
  let decisions: Decision[] = [];
  let stopped: string | null = null;
  let earlierOf: Selected['earlierOf'] = () => [];
  try {
    const selected = await select(how);
    notices.push(...selected.notices);
    earlierOf = selected.earlierOf;
    const lines = linesIn(selected.placements, await fs.realpath(how.root), how.relink, earlierOf);
    decisions = plan(selected.pictures, how.wish, how.place, lines);
    const undertakings = await settled(decisions, how, results, conversions);
    for (const { of } of undertakings) folders.add(path.dirname(of.order.output));
    await Promise.all([...folders].map(sweep));
    const means: Means = { ...how, results, keep, inTurn: oneAtATime() };
    await undertake(undertakings, how, means, conversions);
  } catch (error) {
    const end = endOf(error, how.signal);
    stopped = end.stopped;
    for (const [at, { asked }] of decisions.entries()) conversions[at] ??= failed(asked, how.wish, end.left);
  }
  const kept = decisions.filter((_, at) => conversions[at].output !== null);
  const lost = lostTones(kept, how.wish);
  notices.push(...lostToneNotices(lost, how.dryRun));
  const others = otherProfilesNotice(kept, how.wish);
  if (others) notices.push(others);
  const idle = idleQuality(how.wish, conversions);
  if (idle) notices.push(idle);
  const relinked =
    how.relink && stopped === null
      ? await relinkToResults({ ...how, results, earlierOf }, decisions, conversions)
      : null;
  const gone = how.place.kind === 'in-place' ? madeOf(conversions) : relinked?.gone;
  const ended = await endedWaivers(how.root, gone ?? []);
  if (ended) notices.push(ended);
  return {
    ...{ dryRun: how.dryRun, conversions, notices, relinking: relinked?.relinking ?? null, stopped },
    folder: how.place.kind === 'folder' ? how.place.shown : null,
    originals: how.place.kind === 'in-place' ? await originalsOf(how.root) : null,
    untoned: lost.strong.map(({ path: at }) => at),
    faint: lost.faint.map(({ path: at }) => at),
    spared: decisions.flatMap(({ asked: { path: at }, ...decision }) =>
      decision.do === 'skip' && decision.loses ? { path: at, loses: decision.loses } : [],
    ),
    below: how.wish.to === 'rgb-neutral' ? how.wish.below : null,
  };
}

async function undertake(
  undertakings: readonly { at: number; of: Undertaking }[],
  { jobs = Math.min(2, availableParallelism()), signal, onProgress }: Converting,
  means: Means,
  conversions: Conversion[],
): Promise<void> {
  let done = 0;
  // one more than there are converters, so that none of them waits for a disk
  await inLanes(undertakings, jobs + 1, async ({ at, of }) => {
    signal?.throwIfAborted();
    conversions[at] = await attempt(of, means);
    onProgress?.(++done, undertakings.length, of.asked.path);
  });
}

async function attempt(of: Undertaking, means: Means): Promise<Conversion> {
  try {
    return await carryOut(of, means);
  } catch (error) {
    means.signal?.throwIfAborted();
    return failed(of.asked, means.wish, troubleOf(error, path.dirname(of.order.output)));
  }
}

/** Runs what it is given one after the other. */
function oneAtATime(): Means['inTurn'] {
  let last: Promise<unknown> = Promise.resolve();
  return work => {
    const turn = last.then(work);
    last = turn.catch(() => {});
    return turn;
  };
}

const made = ({ outcome }: Conversion) => outcome === 'converted' || outcome === 'planned';

/** SHA-256 of pictures that are replaced, or would be. */
const madeOf = (conversions: readonly Conversion[]) => conversions.filter(made).map(({ sha256 }) => sha256);

/** A quality that was asked for and of which nothing came. */
function idleQuality({ quality }: RemedyWish, conversions: readonly Conversion[]): string | null {
  const results = conversions.filter(made);
  if (quality === null || !results.length || results.some(({ format }) => format === 'jpeg')) return null;
  return 'No result is a JPEG, so the quality that was asked for counted for nothing.';
}

/** Where originals of the book at `root` are kept, or would be, relative to it. */
async function originalsOf(root: string): Promise<string> {
  const realRoot = await fs.realpath(root);
  return path
    .relative(realRoot, originalsIn((await keepOf(realRoot)).folder))
    .split(path.sep)
    .join('/');
}
