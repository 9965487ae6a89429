import fs from 'node:fs/promises';
import path from 'node:path';
import { compare, discover } from '../book/discovery/discover';
import { hashOf } from '../book/hash';
import { isWithin } from '../book/settings/within';
import type { Undone, UndoReport } from '../shared/conversion';
import { History, type Known } from './keep/history';
import { heldOriginal, OriginalLost } from './keep/originals';
import { pathIn } from './keep/place';
import { restorePicture } from './keep/restore';
import { sweep } from './keep/temporary';
import { withKeep } from './keep/with-keep';
import { undoRelinking } from './relinking/undo';
import { unrememberedLines } from './relinking/unremembered';
import { type Selecting, targetsOf } from './select';
import { DiskFull, troubleOf } from './trouble';
import { unkept } from './unkept';

export type Undoing = Pick<Selecting, 'root' | 'paths' | 'settings' | 'signal' | 'onProgress'> & {
  dryRun: boolean;
  /** With it no layout is written (see `Selecting`). */
  open?: ReadonlyMap<string, string>;
  /** False: lines of layouts stay, whatever they were made to place. Left out: they place the originals again. */
  lines?: boolean;
};

/**
 * Brings back what conversions in place replaced, bit for bit, where the picture still is what the conversion made of
 * it, and has layouts place the originals again. Pictures that were moved since are found by their content.
 * Cancelling between pictures ends it in good order: what was brought back is told.
 * @throws RemedyError where another run is at work on the book; the signal's reason when cancelled before the first
 */
export function undoConversions(how: Undoing): Promise<UndoReport> {
  return how.dryRun ? undoAll(how) : withKeep(how.root, notNoted, () => undoAll(how));
}

async function undoAll(how: Undoing): Promise<UndoReport> {
  const realRoot = await fs.realpath(how.root);
  const history = new History();
  const { present, missing } = await candidatesOf(how, realRoot, history);
  if (!how.dryRun) await Promise.all([...new Set(present.map(({ file }) => path.dirname(file)))].map(sweep));
  const shown = (file: string) => path.relative(realRoot, file).split(path.sep).join('/');
  const undone: Undone[] = [];
  const moved: string[] = [];
  const unknown: Candidate[] = [];
  let stopped: string | null = null;
  for (const [at, { file, named }] of present.entries()) {
    if (how.signal?.aborted) {
      stopped = UNDOING_STOPPED;
      break;
    }
    try {
      const one = await undoOne(file, history, how.dryRun);
      if (one) undone.push({ path: shown(file), ...one.undone });
      else unknown.push({ file, named });
      if (one?.moved) moved.push(one.undone.sha256!);
    } catch (error) {
      if (!(error instanceof DiskFull)) throw error;
      stopped = UNDOING_FULL;
      undone.push({
        path: shown(file),
        outcome: 'failed',
        sha256: null,
        reason: 'Not undone: the disk is full.',
      });
      break;
    }
    how.onProgress?.(at + 1, present.length, shown(file));
  }
  for (const { file, last } of await history.lostFrom(missing, moved))
    undone.push({ path: shown(file), ...(await leftAlone(last, 'It is not there any more.')) });
  const converted = await unkept(
    unknown.map(({ file }) => file),
    present.map(({ file }) => file),
  );
  for (const { file, named } of unknown) {
    const from = converted.get(file);
    if (from) undone.push({ path: shown(file), outcome: 'lost', sha256: from, reason: UNKEPT });
    else if (named) undone.push({ path: shown(file), outcome: 'skipped', sha256: null, reason: NEVER });
  }
  undone.sort((x, y) => compare(x.path, y.path));
  const isBack = undone.some(({ outcome }) => outcome === 'restored' || outcome === 'planned');
  const relinking =
    stopped !== null || how.lines === false
      ? null
      : ((await undoRelinking(how)) ??
        (isBack
          ? null
          : await unrememberedLines(
              how,
              present.map(({ file }) => file),
            )));
  return { dryRun: how.dryRun, undone, relinking, stopped };
}

export const UNDOING_STOPPED =
  'Stopped. Every picture is whole, and what was brought back stays. Start again to go on.';
const UNDOING_FULL =
  'The disk is full, so no more was brought back. Every picture is whole, the result or the original. Make room, as large as the largest picture at least, and start again: what was brought back stays.';
const notNoted = (folder: string, code: string) =>
  `What is brought back cannot be noted in "${folder}" (${code}), so nothing was undone: every picture is what it was. ${code === 'ENOSPC' || code === 'EDQUOT' ? 'Make room, as large as the largest picture at least,' : 'Give yourself the right to write there'} and start again.`;
const NEVER = 'It was not converted in place.';
const UNKEPT =
  'Its own record says that it was converted, and neither its original nor a note of that is kept for this book: a clean-up may have deleted both. Bring the original back from a copy of your own.';

interface Candidate {
  file: string;
  named: boolean;
}

/** Pictures as they lie there, and paths that a journal speaks of where there is none any more. */
async function candidatesOf(
  how: Undoing,
  realRoot: string,
  history: History,
): Promise<{ present: Candidate[]; missing: string[] }> {
  const { targets } = await targetsOf(await discover(how), { ...how, place: { kind: 'in-place' } });
  const present = new Map<string, Candidate>();
  const missing: string[] = [];
  for (const { file, named, obstacle } of targets) if (!obstacle) present.set(file, { file, named });
  for (const named of how.paths) {
    const real = await fs.realpath(named).catch(() => null);
    const told = real ? await history.pathsIn(real) : [];
    for (const file of told.filter(each => isWithin(realRoot, each) && !present.has(each))) {
      const stat = await fs.lstat(file).catch(() => null);
      if (stat?.isFile()) present.set(file, { file, named: false });
      else missing.push(file);
    }
  }
  return { present: [...present.values()].sort((x, y) => compare(x.file, y.file)), missing };
}

/** Null: nothing is to be undone there. */
async function undoOne(
  file: string,
  history: History,
  dryRun: boolean,
): Promise<{ undone: Omit<Undone, 'path'>; moved: boolean } | null> {
  const { size, mode } = await fs.stat(file);
  if (!(await history.mayKnow(file, size))) return null;
  const sha256 = await hashOf(file);
  const result = await history.resultAt(file, sha256);
  if (result) {
    const undone = await restored(file, result, (mode & 0o222) === 0, dryRun);
    const isBack = undone.outcome === 'restored' || undone.outcome === 'planned';
    return { undone, moved: isBack && result.entry.path !== pathIn(result.keep, file) };
  }
  const last = await history.lastAt(file);
  if (!last) return null;
  const { from, event } = last.entry;
  const original = { outcome: 'skipped' as const, sha256: from, reason: 'It is the original already.' };
  if (sha256 === from) return { undone: original, moved: false };
  if (event === 'restored') return null;
  const changed = await leftAlone(last, 'It was changed since it was converted, and was left as it is.');
  return { undone: changed, moved: false };
}

async function restored(
  file: string,
  result: Known,
  isProtected: boolean,
  dryRun: boolean,
): Promise<Omit<Undone, 'path'>> {
  const { from } = result.entry;
  const failure = (reason: string, outcome: 'failed' | 'lost' = 'failed') => ({
    ...{ outcome, sha256: from, reason },
  });
  if (isProtected)
    return failure('It is write-protected, so it was left as it is. Take the protection away.');
  try {
    if (dryRun) {
      await heldOriginal(result.keep.folder, from);
      return { outcome: 'planned', sha256: from, reason: null };
    }
    await restorePicture(file, result);
    return { outcome: 'restored', sha256: from, reason: null };
  } catch (error) {
    return failure(
      troubleOf(error, path.dirname(file), null),
      error instanceof OriginalLost ? 'lost' : 'failed',
    );
  }
}

/** What is kept has no ending of its own, by which programs would know it. */
const keptWords = (kept: string, picture: string): string =>
  `Its original is kept as "${kept}": copy it from there and end its name in ${path.posix.extname(picture)}.`;

/** A picture that nothing is done about, and where its original lies. */
async function leftAlone({ keep, entry }: Known, why: string): Promise<Omit<Undone, 'path'>> {
  const { from } = entry;
  try {
    const kept = await heldOriginal(keep.folder, from);
    return { outcome: 'failed', sha256: from, reason: `${why} ${keptWords(kept, entry.path)}` };
  } catch (error) {
    if (!(error instanceof OriginalLost)) throw error;
    return { outcome: 'lost', sha256: from, reason: `${why} ${error.message}` };
  }
}
