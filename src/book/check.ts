import fs from 'node:fs/promises';
import { judge } from '../rules';
import type { BookReport } from '../shared/finding';
import type { FactsCache } from './cache/cache';
import { discover } from './discovery/discover';
import { forecastAll } from './forecasts';
import { gather } from './gather';
import { noticesOf } from './notices';
import { bookPictures, standings } from './pictures';
import type { Pool } from './pool';
import { markReplaced } from './replaced';
import type { Settings } from './settings/settings';
import { summarise } from './summary';

export interface CheckOptions {
  /** Absolute. */
  root: string;
  /** Absolute folders and files in it; the root itself for the whole book. */
  paths: readonly string[];
  settings: Settings;
  pool: Pick<Pool, 'facts'>;
  /** Null: everything is read. What was read is kept in it; writing it is the caller's `save`. */
  cache: FactsCache | null;
  signal?: AbortSignal;
  onProgress?: (done: number, total: number, path: string) => void;
}

/**
 * Checks a book: finds its pictures, reads them, forecasts them on their targets and judges them. Opens regular files
 * only, never one outside the root, and gives way to other work every few milliseconds. Rejects with the signal's
 * reason when cancelled, and where no reader can be started; whatever is wrong with a picture is a finding.
 */
export async function checkBook(options: CheckOptions): Promise<BookReport> {
  const { root, paths, settings, pool, cache, signal, onProgress } = options;
  const found = await discover({ root, paths, settings, signal });
  const realRoot = await fs.realpath(root);
  const facts = await gather(found.files, { realRoot, pool, cache, signal, onProgress });
  if (paths.includes(root)) cache?.retain(found.files.map(file => file.path));

  const standing = standings(settings);
  const pictures = found.files.flatMap(({ path }, at) => bookPictures(path, facts[at], standing(path)));
  markReplaced(pictures);
  await forecastAll(pictures, signal);
  const findings = judge({ pictures, targets: settings.targets, ruleSettings: settings.rules });
  const reports = pictures.map((picture, at) => ({ ...picture, findings: findings.pictures[at] }));
  return {
    targets: settings.targets,
    pictures: reports,
    findings: findings.book,
    notices: noticesOf(found, settings, pictures, paths.includes(root)),
    summary: summarise(reports, findings.book),
  };
}
