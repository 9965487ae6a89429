import fs from 'node:fs/promises';
import path from 'node:path';
import { cacheFolder } from '../../book/cache/folder';
import { isWithin } from '../../book/settings/within';
import { convertPictures } from '../../remedy/batch';
import { createConverters } from '../../remedy/converters';
import type { Place } from '../../remedy/plan/types';
import { RemedyError } from '../../remedy/remedy-error';
import { STOPPED } from '../../remedy/trouble';
import { UNDOING_STOPPED, undoConversions } from '../../remedy/undo';
import { convertJson, undoJson } from '../../report/json/convert';
import { otherThanAsked } from '../../report/otherwise';
import { convertHeadline, convertText, undoHeadline, undoText } from '../../report/text/convert';
import type { ConvertReport, UndoReport } from '../../shared/conversion';
import { named, oneBook, rootOf, settingsOf, shown } from '../book';
import { EXIT, Failure } from '../failure';
import { fitted } from '../fitting';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { Progress } from '../progress';
import { tellLost, withCache } from '../reading';
import { styleOf } from '../style';
import type { ConvertVerbOptions } from '../verbs/convert';
import { wishOf } from '../wish';
import { candidates } from './candidates';

/** Converts pictures, or undoes that, writes the report and gives the exit code. */
export async function convert(names: readonly string[], options: ConvertVerbOptions): Promise<number> {
  if (options.output !== undefined) await refuseOutput(options.output, options);
  const paths = names.map(named);
  try {
    if (options.candidates !== undefined) return await candidates(names, options);
    return await (options.undo ? undo(paths, options) : convertAll(paths, options));
  } catch (error) {
    throw error instanceof RemedyError ? new Failure(error.message) : error;
  }
}

async function convertAll(paths: string[], options: ConvertVerbOptions): Promise<number> {
  const plain = await wishOf(options);
  const place = await placeOf(options, paths);
  const root = await rootOf(paths);
  await oneBook(root, paths, 'converted');
  const { settings, files } = await settingsOf(root, undefined, 'converted');
  if (options.relink) await refuseRelinking(place, root);
  const { wish, fitting } = fitted(plain, options, settings);
  const dryRun = options.dryRun ?? false;
  const { report, end } = await working(STOPPED, (signal, onProgress) =>
    withCache(root, cache => {
      const converters = createConverters({
        converterFile: path.join(__dirname, 'converter.js'),
        size: options.jobs,
        onLost: tellLost(root),
      });
      return convertPictures({
        ...{ root, paths, settings, cache, wish, place, converters, dryRun, signal, onProgress },
        // they read what is not known yet, and need not decode it again
        pool: converters,
        jobs: options.jobs,
        relink: options.relink ?? false,
        meant: options.all ? 'all' : 'named',
        memory: cacheFolder(),
      });
    }),
  );
  const { format, output } = options;
  // nothing there says by what the results are to be judged
  const away =
    place.kind === 'folder' && files.length > 0 && !isWithin(await fs.realpath(root), place.folder);
  const judgedBy = away ? path.relative(process.cwd(), files[0]).split(path.sep).join('/') : null;
  await writeResult(
    format === 'json'
      ? convertJson(report, fitting)
      : convertText(report, fitting, styleOf(output), judgedBy),
    output,
    { format },
  );
  tellWritten(output, convertHeadline(report));
  if (end) throw end;
  if (!report.conversions.length)
    throw new Failure(
      `${paths.map(shown).join(', ')} ${paths.length === 1 ? 'holds' : 'hold'} no picture of the book to convert. Name another folder, or see "pictures" and "ignore" in evengrey.json and the ignore files.`,
    );
  const code = exitCodeOf(report.conversions);
  return report.relinking?.problems.length || otherThanAsked(report).length ? EXIT.findings : code;
}

/** A report, not the results: a name without extension was most likely meant for a folder. */
async function refuseOutput(output: string, options: ConvertVerbOptions): Promise<void> {
  const stat = await fs.stat(output).catch(() => null);
  // a pipe or a terminal has no extension
  if (path.extname(output) === '' && (!stat || stat.isFile() || stat.isDirectory()))
    throw new Failure(
      `--output is the file for the report, and "${output}" has no extension. Did you mean --out, the folder for the results? Else call it .txt or .json.`,
    );
  await refuse(output, options);
}

/** Says, where the report went into a file, that it did and what became of the pictures. */
function tellWritten(output: string | undefined, headline: string): void {
  if (output !== undefined) process.stderr.write(`${headline} The report is in ${shown(output)}.\n`);
}

/** Results that have no name of their own, or one that no layout of the book can say. */
async function refuseRelinking(place: Place, root: string): Promise<void> {
  if (place.kind === 'in-place')
    throw new Failure(
      '--relink and --in-place do not go together: the names stay, so there is nothing to relink.',
    );
  if (place.kind === 'folder' && !isWithin(await fs.realpath(root), place.folder))
    throw new Failure(
      `--relink: "${place.shown}" lies outside the book's folder, where its layouts cannot reach. Name a folder in the book.`,
    );
}

async function undo(paths: string[], options: ConvertVerbOptions): Promise<number> {
  const { format, output, undo: _, dryRun = false, jobs: __, ...others } = options;
  const [other] = Object.keys(others);
  if (other)
    throw new Failure(`--undo goes with no other option but --dry-run: leave --${dashed(other)} out.`);
  const root = await rootOf(paths);
  const { settings } = await settingsOf(root, undefined, 'undone');
  const { report, end } = await working(UNDOING_STOPPED, (signal, onProgress) =>
    undoConversions({ root, paths, settings, dryRun, signal, onProgress }),
  );
  await writeResult(format === 'json' ? undoJson(report) : undoText(report, styleOf(output)), output, {
    format,
  });
  tellWritten(output, undoHeadline(report));
  if (end) throw end;
  const lost = report.undone.filter(({ outcome }) => outcome === 'lost').length;
  if (lost)
    throw new Failure(
      `${lost === 1 ? 'The original of 1 picture is' : `The originals of ${lost} pictures are`} not kept any more and cannot be brought back: each is named in the report.`,
    );
  const code = exitCodeOf(report.undone);
  return report.relinking?.problems.length ? EXIT.findings : code;
}

const dashed = (key: string) => key.replace(/[A-Z]/g, letter => `-${letter.toLowerCase()}`);

/**
 * Work that can be stopped and shows how far it is; `end`: what ended it early, to be thrown once the report is written.
 * @param message said when a person or the system stopped it
 */
function working<Report extends Pick<ConvertReport | UndoReport, 'stopped'>>(
  message: string,
  work: (
    signal: AbortSignal,
    onProgress: (done: number, total: number, file: string) => void,
  ) => Promise<Report>,
): Promise<{ report: Report; end: Error | null }> {
  const progress = new Progress(process.stderr);
  return interruptible(async signal => {
    try {
      const report = await work(signal, (done, total, file) => progress.tell(done, total, file));
      const { stopped } = report;
      return { report, end: stopped === null ? null : signal.aborted ? signal.reason : new Failure(stopped) };
    } finally {
      progress.end();
    }
  }, message);
}

const exitCodeOf = (all: readonly { outcome: string }[]): number =>
  all.some(({ outcome }) => outcome === 'failed') ? EXIT.findings : EXIT.clean;

async function placeOf({ out, inPlace }: ConvertVerbOptions, paths: readonly string[]): Promise<Place> {
  if (out === undefined) return { kind: inPlace ? 'in-place' : 'beside' };
  if (inPlace) throw new Failure('--in-place and --out contradict each other: leave one of them out.');
  const folder = await trueFolder(named(out));
  for (const file of paths) {
    const real = await fs.realpath(file).catch(() => file);
    if (isWithin(folder, real))
      throw new Failure(
        `--out: "${out}" holds ${shown(file)} itself. Name a folder for the results alone, or --in-place.`,
      );
  }
  return { kind: 'folder', folder, shown: out.split(path.sep).join('/').replace(/\/+$/, '') };
}

/** A folder that need not be there yet, with the links resolved that lead to it. */
async function trueFolder(folder: string): Promise<string> {
  const stat = await fs.stat(folder).catch(() => null);
  if (stat && !stat.isDirectory()) throw new Failure(`--out: ${shown(folder)} is no folder. Name another.`);
  if (stat) return fs.realpath(folder);
  return path.join(await trueFolder(path.dirname(folder)), path.basename(folder));
}
