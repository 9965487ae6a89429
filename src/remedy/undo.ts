import fs from 'node:fs/promises';
import path from 'node:path';
import { compare, discover } from '../book/discovery/discover';
import { hashOf } from '../book/hash';
import { isWithin } from '../book/settings/within';
import type { Undone, UndoReport } from '../shared/conversion';
import { History, type Known } from './keep/history';
import { originalIn } from './keep/originals';
import { restorePicture } from './keep/restore';
import { sweep } from './keep/temporary';
import { withKeep } from './keep/with-keep';
import { type Selecting, targetsOf } from './select';
import { DiskFull, troubleOf } from './trouble';

export type Undoing = Pick<Selecting, 'root' | 'paths' | 'settings' | 'signal' | 'onProgress'> & {
  dryRun: boolean;
};

/**
 * Brings back what conversions in place replaced, bit for bit, where the picture still is what the conversion made of
 * it. Pictures that were moved since are found by their content.
 * @throws RemedyError where another run is at work on the book; the signal's reason when cancelled
 */
export function undoConversions(how: Undoing): Promise<UndoReport> {
  return how.dryRun ? undoAll(how) : withKeep(how.root, () => undoAll(how));
}

async function undoAll(how: Undoing): Promise<UndoReport> {
  const realRoot = await fs.realpath(how.root);
  const history = new History();
  const { present, missing } = await candidatesOf(how, realRoot, history);
  if (!how.dryRun) await Promise.all([...new Set(present.map(({ file }) => path.dirname(file)))].map(sweep));
  const shown = (file: string) => path.relative(realRoot, file).split(path.sep).join('/');
  const undone: Undone[] = [];
  const broughtBack = new Set<string>();
  let stopped: string | null = null;
  for (const [at, { file, named }] of present.entries()) {
    how.signal?.throwIfAborted();
    try {
      const one = await undoOne(file, history, how.dryRun);
      if (one) undone.push({ path: shown(file), ...one });
      else if (named) undone.push({ path: shown(file), outcome: 'skipped', sha256: null, reason: NEVER });
      if (one?.outcome === 'restored' || one?.outcome === 'planned') broughtBack.add(one.sha256!);
    } catch (error) {
      if (!(error instanceof DiskFull)) throw error;
      stopped = error.message;
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
  for (const file of missing) {
    const last = await history.lastMissing(file);
    if (last && !broughtBack.has(last.entry.from)) undone.push({ path: shown(file), ...gone(last) });
  }
  undone.sort((x, y) => compare(x.path, y.path));
  return { dryRun: how.dryRun, undone, stopped };
}

const NEVER = 'It was not converted in place.';

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
): Promise<Omit<Undone, 'path'> | null> {
  const { size, mode } = await fs.stat(file);
  if (!(await history.mayKnow(file, size))) return null;
  const sha256 = await hashOf(file);
  const result = await history.resultAt(file, sha256);
  if (result) return restored(file, result, (mode & 0o222) === 0, dryRun);
  const last = await history.lastAt(file);
  if (!last) return null;
  const { from, event } = last.entry;
  if (sha256 === from) return { outcome: 'skipped', sha256: from, reason: 'It is the original already.' };
  if (event === 'restored') return null;
  return {
    outcome: 'failed',
    sha256: from,
    reason: `It was changed since it was converted, and was left as it is. Its original is kept as "${keptAs(last)}".`,
  };
}

async function restored(
  file: string,
  result: Known,
  isProtected: boolean,
  dryRun: boolean,
): Promise<Omit<Undone, 'path'>> {
  const { from } = result.entry;
  const failure = (reason: string) => ({ outcome: 'failed' as const, sha256: from, reason });
  if (isProtected)
    return failure('It is write-protected, so it was left as it is. Take the protection away.');
  if (dryRun) return { outcome: 'planned', sha256: from, reason: null };
  try {
    await restorePicture(file, result);
    return { outcome: 'restored', sha256: from, reason: null };
  } catch (error) {
    return failure(troubleOf(error));
  }
}

const keptAs = ({ keep, entry }: Known) => originalIn(keep.folder, entry.from);

const gone = (last: Known): Omit<Undone, 'path'> => ({
  outcome: 'failed',
  sha256: last.entry.from,
  reason: `It is not there any more. Its original is kept as "${keptAs(last)}".`,
});
