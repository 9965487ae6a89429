import path from 'node:path';
import { checkBook } from '../../book/check';
import { type Overrides, override } from '../../book/overrides';
import { checkSince } from '../../book/revisions/since';
import { checkStaged } from '../../book/revisions/staged';
import type { Settings } from '../../book/settings/settings';
import { writers } from '../../report/check';
import type { BookReport, Severity } from '../../shared/finding';
import { rootOf, settingsOf, shown } from '../book';
import { conditionsOf } from '../conditions';
import { EXIT, Failure } from '../failure';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { placeOf } from '../place';
import { Progress } from '../progress';
import { withReading } from '../reading';
import { revisionFailure } from '../revision-failure';
import { styleOf } from '../style';
import type { CheckVerbOptions } from '../verbs/check';

/** Checks a book, writes the report and gives the exit code. */
export async function check(named: readonly string[], options: CheckVerbOptions): Promise<number> {
  const conditions = conditionsOf(options);
  if (options.output !== undefined) await refuse(options.output);
  const paths = (named.length ? named : ['.']).map(name => path.resolve(name));
  const root = await rootOf(paths);
  const { settings, files } = await settingsOf(root, options.settings, 'checked');
  const adjust = (some: Settings) => adjusted(some, conditions);
  const report = await readAndJudge({ root, paths, settings, adjust }, options);
  const failing = failingOf(report, options.maxWarnings);
  const text = writers[options.format](report, {
    place: await placeOf(root, files[0]),
    failing,
    style: styleOf(options.output),
  });
  await writeResult(text, options.output);
  const empty = report.scope ? [] : paths.filter(file => !holdsPicture(report, path.relative(root, file)));
  if (empty.length)
    throw new Failure(
      `${empty.map(shown).join(', ')} ${empty.length === 1 ? 'holds' : 'hold'} no picture of the book, so nothing was checked there. Name another folder, or see "pictures" and "ignore" in evengrey.json and the ignore files.`,
    );
  return exitCodeOf(report, failing, options.maxWarnings);
}

/** A check that looked at nothing has passed nothing, though a script would take it so. */
function holdsPicture({ pictures }: BookReport, relative: string): boolean {
  const at = relative.split(path.sep).join('/');
  return pictures.some(picture => at === '' || picture.path === at || picture.path.startsWith(`${at}/`));
}

interface Book {
  root: string;
  paths: readonly string[];
  settings: Settings;
  /** With the conditions that were asked for on the spot. */
  adjust: (settings: Settings) => Settings;
}

function readAndJudge(
  { root, paths, settings, adjust }: Book,
  options: CheckVerbOptions,
): Promise<BookReport> {
  const { since, staged, whole = false } = options;
  if (whole && since === undefined && !staged)
    throw new Failure(
      '--whole goes with --since or --staged: without them the whole book is checked anyway.',
    );
  return interruptible(signal =>
    withReading(root, options, async ({ pool, cache }) => {
      const progress = new Progress(process.stderr);
      const reading = {
        ...{ root, paths, pool, cache, signal },
        onProgress: (done: number, total: number, file: string) => progress.tell(done, total, file),
      };
      try {
        if (since !== undefined)
          return await checkSince({ ...reading, settings: adjust(settings), since, whole });
        if (staged) {
          const settingsNamed = options.settings !== undefined;
          return await checkStaged({ ...reading, settings: adjust(settings), settingsNamed, adjust, whole });
        }
        return await checkBook({ ...reading, settings: adjust(settings) });
      } catch (error) {
        throw revisionFailure(error, root, 'checked');
      } finally {
        progress.end();
      }
    }),
  );
}

/** @throws Failure where a paper or a light is asked for and nobody said a process */
function adjusted(settings: Settings, conditions: Overrides): Settings {
  const targets = override(settings.targets, conditions);
  if (!targets.length && (conditions.paper || conditions.light))
    throw new Failure('Nobody said how this book is printed: name a process with --process too.');
  return { ...settings, targets };
}

/** Errors fail; warnings only beyond what is allowed; notes never. */
function failingOf({ summary }: BookReport, maxWarnings = Number.POSITIVE_INFINITY): ReadonlySet<Severity> {
  return new Set(summary.warnings > maxWarnings ? ['error', 'warning'] : ['error']);
}

function exitCodeOf({ summary }: BookReport, failing: ReadonlySet<Severity>, maxWarnings?: number): number {
  if (failing.has('warning')) {
    const many = summary.warnings === 1 ? '1 warning is' : `${summary.warnings} warnings are`;
    process.stderr.write(`${many} more than --max-warnings ${maxWarnings} allows.\n`);
  }
  return summary.errors > 0 || failing.has('warning') ? EXIT.findings : EXIT.clean;
}
