// no-unit-test: test/cli/actions/compare.test.ts runs the built program
import fs from 'node:fs/promises';
import path from 'node:path';
import { compareRevisions } from '../../book/comparison/compare';
import { branchOfPassingMerge } from '../../book/git/passing-merge';
import { InsideGitError, openRepository } from '../../book/git/repository';
import { type ShownRasters, showComparison, shownKey } from '../../book/revisions/show';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Around } from '../../report/compare/around';
import { comparisonCommands } from '../../report/compare/github';
import { comparisonJson } from '../../report/compare/json';
import { comparisonMarkdown } from '../../report/compare/markdown';
import { comparisonPage } from '../../report/compare/page';
import type { Shown } from '../../report/compare/sides';
import { comparisonText } from '../../report/compare/text';
import type { Comparison } from '../../shared/comparison';
import { named, oneBook, rootOf, shown } from '../book';
import { conditionsOf, somethingToPrint } from '../conditions';
import { type Whereabouts, withResult } from '../failed-result';
import { EXIT, Failure } from '../failure';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { placeOf } from '../place';
import { Progress } from '../progress';
import { withReading } from '../reading';
import { revisionFailure } from '../revision-failure';
import { styleOf } from '../style';
import type { CompareVerbOptions } from '../verbs/compare';
import { tooMany, tooManyWords } from '../warnings';

/** Compares two revisions of a book, writes what was found and gives the exit code. */
export function compare(base: string, head: string | null, options: CompareVerbOptions): Promise<number> {
  const at: Whereabouts = { root: null };
  return withResult({ ...options, done: 'compared' }, at, () => compareAt(base, head, options, at));
}

async function compareAt(
  base: string,
  head: string | null,
  options: CompareVerbOptions,
  at: Whereabouts,
): Promise<number> {
  const conditions = conditionsOf(options);
  if (options.output !== undefined) await refuse(options.output, options);
  const root = await rootOf([named(options.book)]).catch(notInsideGit);
  at.root = root;
  await oneBook(root, [root], 'compared');
  const { mergeBase: fromMergeBase, whole = false } = options;
  const { comparison, pictures } = await interruptible(signal =>
    withReading(root, options, async ({ pool, cache }) => {
      const progress = new Progress(process.stderr);
      try {
        const comparison = await compareRevisions({
          ...{ root, base, head, fromMergeBase, conditions, whole, pool, cache, signal },
          onProgress: (done, total) => progress.tell(done, total, 'from git'),
        });
        const rasters =
          options.format === 'html' ? await showComparison(root, comparison, { pool, signal }) : null;
        return { comparison, pictures: rasters && (await lightened(rasters)) };
      } catch (error) {
        throw revisionFailure(error, root, 'compared');
      } finally {
        progress.end();
      }
    }),
  );
  somethingToPrint(comparison.head.targets, conditions);
  hasPictures(comparison, options.book);
  const place = await placeOf(root, (await settingsIn(root)) ?? undefined);
  // a person who reads the comment has the branch, and not what a service merged it into
  const branch = head === null && options.format === 'markdown' ? await branchOfPassingMerge(root) : null;
  const around = { place, conditions: conditionWords(options), branch };
  await writeResult(written(comparison, pictures, around, options), options.output, options);
  return exitCodeOf(comparison, options.maxWarnings);
}

/** In a clone without files no folder is found, and that is why. @throws whatever stands against it */
async function notInsideGit(error: unknown): Promise<never> {
  const here = process.cwd();
  const why = await openRepository(here).catch(reason => reason);
  throw why instanceof InsideGitError ? revisionFailure(why, here, 'compared') : error;
}

/** A gate on the wrong folder passes nothing, nor one on a book that moved away. @throws Failure where there is no picture to print */
function hasPictures({ base, head }: Comparison, book: string): void {
  if (head.pictures) return;
  throw new Failure(
    base.pictures
      ? `${shown(named(book))} holds no picture of the book any more, so nothing of it is left to compare: before, it held ${base.pictures}. Where the book lies in another folder now, name that with --book.`
      : `${shown(named(book))} holds no picture of the book in either revision, so nothing was compared. Name another folder with --book, or see "pictures" and "ignore" in evengrey.json and the ignore files.`,
  );
}

function written(
  comparison: Comparison,
  pictures: ReadonlyMap<string, NonNullable<Shown>> | null,
  around: Around,
  { format, output }: CompareVerbOptions,
): string {
  switch (format) {
    case 'json':
      return comparisonJson(comparison);
    case 'github':
      return comparisonCommands(comparison, around.place);
    case 'markdown':
      return comparisonMarkdown(comparison, around);
    case 'html':
      return comparisonPage(
        comparison,
        around,
        (side, file, page) => pictures?.get(shownKey(side, file, page)) ?? null,
      );
    default:
      return comparisonText(comparison, around, styleOf(output));
  }
}

/** As they were given, to be given again. */
const conditionWords = ({ process, paper, light }: CompareVerbOptions): string[] =>
  Object.entries({ process, paper, light }).flatMap(([option, value]) =>
    value === undefined ? [] : [`--${option}`, value],
  );

/** Where what is said of the whole book is shown; null where the folder has no settings. */
async function settingsIn(root: string): Promise<string | null> {
  const file = path.join(root, SETTINGS_FILE);
  return (await fs.stat(file).catch(() => null))?.isFile() ? file : null;
}

/** Smaller in bytes: the page carries all of them. */
async function lightened(rasters: ShownRasters): Promise<Map<string, NonNullable<Shown>>> {
  // loads the decoder, which no other format needs here
  const { light } = await import('../../picture/light');
  const shown = new Map<string, NonNullable<Shown>>();
  for (const [key, raster] of rasters)
    shown.set(key, 'trouble' in raster ? raster : await light(raster, Math.max(raster.width, raster.height)));
  return shown;
}

/** New errors fail; new warnings, and new slips in the settings as they do, only beyond what is allowed; what was there before never. */
function exitCodeOf({ summary, slips = [] }: Comparison, maxWarnings?: number): number {
  const { errors, warnings } = summary.new;
  const counted = { warnings, slips: slips.length };
  const over = tooMany(counted, maxWarnings);
  if (over) process.stderr.write(tooManyWords(counted, maxWarnings, { fresh: true }));
  return errors > 0 || over ? EXIT.findings : EXIT.clean;
}
