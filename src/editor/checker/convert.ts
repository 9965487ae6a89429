// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import fs from 'node:fs/promises';
import path from 'node:path';
import type { FactsCache } from '../../book/cache/cache';
import { cacheFolder } from '../../book/cache/folder';
import type { Pool } from '../../book/pool';
import { findRoot } from '../../book/root';
import { loadSettings } from '../../book/settings/load';
import type { Settings } from '../../book/settings/settings';
import { isWithin } from '../../book/settings/within';
import { convertPictures } from '../../remedy/batch';
import { createConverters } from '../../remedy/converters';
import { methodNamed } from '../../remedy/grey/methods';
import type { Place } from '../../remedy/plan/types';
import { undoConversions } from '../../remedy/undo';
import { plainWish } from '../../remedy/wish';
import { proofWords } from '../../report/proof';
import { convertText, undoText } from '../../report/text/convert';
import type { ConvertAnswer, ConvertWish, Progress, UndoAnswer, Where } from '../../shared/checker-protocol';
import type { Conversion, Relinked } from '../../shared/conversion';
import type { OpenText } from '../../shared/layout-places';
import type { Made } from '../../shared/remedies';
import type { RemedyWish } from '../../shared/remedy';
import { editOf, takenBack, textsOf } from './taken-back';

/** A report is read in an editor's column. */
const STYLE = { width: 88, colour: false };

interface Work {
  paths: string[];
  signal: AbortSignal;
  onProgress: (progress: Progress) => void;
}

/** What the preview and the commands offer, as a wish. @throws Error where the method is not known */
export function wishOf({ to, method }: Made): RemedyWish {
  const grey = methodNamed(method);
  if (!grey) throw new Error(`There is no way to grey called "${method}".`);
  return plainWish({ to, grey });
}

/**
 * Converts pictures as the command line does: the same plan, the same proof, the same keep. Layouts are not written:
 * the editor has texts of them open.
 * @param cacheOf what was read before of the book at a root
 * @throws RemedyError, RootError and others whose message is for the user; the signal's reason when cancelled
 */
export async function convert(
  wish: ConvertWish,
  pool: Pool,
  cacheOf: (root: string) => Promise<FactsCache>,
  { signal, onProgress }: Omit<Work, 'paths'>,
): Promise<ConvertAnswer> {
  const { paths, where } = wish;
  const { root, settings } = await bookOf(paths);
  const place = await placeOf(where, paths);
  const cache = await cacheOf(root);
  const how = {
    ...{ root, paths, settings, pool, cache, place, signal },
    wish: wishOf(wish),
    meant: wish.spares ? ('none' as const) : ('named' as const),
    relink: where.kind === 'beside' && where.relink,
    open: textsOf(wish.open),
    memory: cacheFolder(),
    onProgress: (done: number, total: number) => onProgress({ done, total }),
  };
  const converters = createConverters({ converterFile: path.join(__dirname, 'converter.js') });
  const report = await convertPictures({ ...how, converters, dryRun: false }).finally(() => cache.save());
  signal.throwIfAborted();
  const of = (outcome: Conversion['outcome']) =>
    report.conversions.filter(conversion => conversion.outcome === outcome);
  const left = ({ path, reason }: Conversion) => ({ path, reason: reason! });
  return {
    converted: of('converted').map(({ path: at, output, proof, moved }) => ({
      path: at,
      output: path.resolve(root, output!),
      proof: proofWords({ ...proof!, moved }),
    })),
    skipped: [
      ...of('skipped').map(left),
      ...of('copied').map(({ path: at }) => ({ path: at, reason: COPIED })),
    ],
    failed: of('failed').map(left),
    relinking: report.relinking && relinkingOf(report.relinking, report.conversions),
    untoned: report.untoned,
    faint: report.faint,
    spared: report.spared,
    notices: report.notices,
    stopped: report.stopped,
    report: convertText(report, { fit: null, counterTint: null }, STYLE),
  };
}

const COPIED = 'It is right as it is, and was copied.';

/** With the pictures whose results they are, by which lines can be taken back. */
function relinkingOf(relinked: Relinked, conversions: readonly Conversion[]): ConvertAnswer['relinking'] {
  const originals = new Map(conversions.map(({ path: at, output }) => [output, at]));
  return {
    edits: [...relinked.changes, ...relinked.settings].map(change => ({
      ...editOf(change),
      original: originals.get(change.picture)!,
      result: change.picture,
    })),
    left: takenBack(relinked).left,
    placedBefore: relinked.placedBefore,
  };
}

/** Brings back what conversions in place replaced; of layouts it only says what is to be changed. @throws as `convert` */
export async function undo({
  paths,
  open,
  lines,
  signal,
  onProgress,
}: Work & { open: OpenText[]; lines: boolean }): Promise<UndoAnswer> {
  const { root, settings } = await bookOf(paths);
  const report = await undoConversions({
    ...{ root, paths, settings, signal, lines, open: textsOf(open) },
    dryRun: false,
    onProgress: (done, total) => onProgress({ done, total }),
  });
  signal.throwIfAborted();
  const of = (outcome: string) => report.undone.filter(each => each.outcome === outcome);
  const left = ({ path, reason }: { path: string; reason: string | null }) => ({ path, reason: reason! });
  return {
    restored: of('restored').map(({ path }) => path),
    skipped: of('skipped').map(left),
    failed: [...of('failed'), ...of('lost')].map(left),
    relinking: report.relinking && takenBack(report.relinking),
    stopped: report.stopped,
    report: undoText(report, STYLE),
  };
}

async function bookOf(paths: readonly string[]): Promise<{ root: string; settings: Settings }> {
  const root = await findRoot(paths);
  const { settings, problems } = await loadSettings(root);
  if (settings) return { root, settings };
  const [{ file, line, message }] = problems;
  throw new Error(`The settings cannot be used, so nothing was done: ${file}, line ${line}: ${message}`);
}

async function placeOf(where: Where, paths: readonly string[]): Promise<Place> {
  if (where.kind !== 'folder') return { kind: where.kind };
  const folder = await fs.realpath(where.folder);
  for (const named of paths) {
    const real = await fs.realpath(named).catch(() => named);
    if (isWithin(folder, real))
      throw new Error(
        `"${path.basename(folder)}" holds "${path.basename(named)}" itself. Choose a folder for the results alone.`,
      );
  }
  return { kind: 'folder', folder, shown: folder.split(path.sep).join('/') };
}
