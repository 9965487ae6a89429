import fs from 'node:fs/promises';
import type { BookReport } from '../shared/finding';
import { type BookFiles, bookFiles } from './book-files';
import type { FactsCache } from './cache/cache';
import { compare } from './discovery/discover';
import { gather } from './gather';
import { idleSettings, slipsOf } from './idle-settings';
import { type JudgedBook, judgeBook } from './judge-book';
import type { Reading } from './layouts/sources';
import { noticesOf, type Searched } from './notices';
import { withChangedOriginals } from './outdated';
import type { Pool } from './pool';
import type { Settings } from './settings/settings';
import { summarise } from './summary';
import type { Waiver } from './waivers/key';

export interface CheckOptions extends Reading {
  /** Absolute. */
  root: string;
  /** Absolute folders and files in it; the root itself for the whole book. */
  paths: readonly string[];
  settings: Settings;
  pool: Pick<Pool, 'facts'>;
  /** Null: everything is read. What was read is kept in it; writing it is the caller's `save`. */
  cache: FactsCache | null;
  onProgress?: (done: number, total: number, path: string) => void;
  /** By which what is waived of a picture stays a finding by itself. It is not taken out here. */
  waivers?: readonly Waiver[];
}

/**
 * Checks a book: finds its pictures, reads them, forecasts them on their targets and judges them. Opens regular files
 * only, never one outside the root, and gives way to other work every few milliseconds. Rejects with the signal's
 * reason when cancelled, and where no reader can be started; whatever is wrong with a picture is a finding.
 */
export async function checkBook(options: CheckOptions): Promise<BookReport> {
  return (await checkLaidOut(options)).report;
}

/** The same with what was found of the book: its files, and its layouts with what they place. */
export async function checkLaidOut(options: CheckOptions): Promise<{ report: BookReport; found: BookFiles }> {
  const { root, paths, settings, pool, cache, signal, onProgress } = options;
  const found = await bookFiles(options);
  const realRoot = await fs.realpath(root);
  const facts = await gather(found.files, { realRoot, pool, cache, signal, onProgress });
  const read = await withChangedOriginals(
    found.files.map(({ path }, at) => ({ path, facts: facts[at] })),
    found.all,
    { cache, signal },
  );
  if (paths.includes(root)) cache?.retain(found.all.map(file => file.path));

  const files = [...read, ...found.missing].sort((x, y) => compare(x.path, y.path));
  const { placements } = found;
  const judged = await judgeBook(files, settings, { placements, waivers: options.waivers, signal });
  return { report: reportOf(judged, found, settings, paths.includes(root)), found };
}

/** What was judged as a report; `whole`: it is all of the book. */
export function reportOf(
  { pictures, findings, spreads = [] }: JudgedBook,
  found: Searched,
  settings: Settings,
  whole: boolean,
): BookReport {
  const idle = whole ? idleSettings(found, settings, pictures) : null;
  const slips = slipsOf(idle ?? []);
  const unplaced = whole && found.notInBook?.length ? (found.unplaced?.paths.length ?? 0) : 0;
  return {
    targets: settings.targets,
    pictures,
    findings,
    ...(spreads.length && { spreads }),
    ...(unplaced && { unplaced }),
    notices: noticesOf(found, settings, pictures, idle),
    ...(slips.length && { slips }),
    summary: summarise(pictures, findings),
  };
}
