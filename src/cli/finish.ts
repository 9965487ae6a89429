// no-unit-test: test/cli/actions/check.test.ts and merge.test.ts run the built program
import path from 'node:path';
import { writers } from '../report/check';
import type { Shown } from '../report/page/book-page';
import type { Place } from '../report/place';
import type { BookReport, Severity } from '../shared/finding';
import type { Resulting } from './failed-result';
import { EXIT, Failure } from './failure';
import { writeResult } from './output';
import { styleOf } from './style';
import { type Counted, tooMany, tooManyWords } from './warnings';

export interface Finishing extends Resulting {
  maxWarnings?: number;
  showWaived?: boolean;
  /** The pictures, where a page shows them. */
  shown?: readonly Shown[];
}

/**
 * Writes the report of a check and gives the exit code. `named`: what was to be looked at in any case, relative to the
 * book's folder, and as the person who asked sees it. @throws Failure where one of them holds no picture
 */
export async function finish(
  report: BookReport,
  named: readonly { at: string; shown: string }[],
  place: Place,
  { maxWarnings, showWaived, shown = [], ...result }: Finishing,
): Promise<number> {
  const failing = failingOf(report, maxWarnings);
  const empty = named.filter(({ at }) => !holdsPicture(report, at));
  const troubles = empty.length ? [{ message: emptyWords(empty), at: null }] : [];
  const circumstances = { place, failing, style: styleOf(result.output), shown, troubles, showWaived };
  await writeResult(writers[result.format](report, circumstances), result.output, result);
  if (empty.length) throw new Failure(emptyWords(empty), { told: true });
  return exitCodeOf(report, failing, maxWarnings);
}

const emptyWords = (empty: readonly { shown: string }[]) =>
  `${empty.map(({ shown }) => shown).join(', ')} ${empty.length === 1 ? 'holds' : 'hold'} no picture of the book, so nothing was checked there. Name another folder, or see "pictures" and "ignore" in evengrey.json and the ignore files.`;

/** A check that looked at nothing has passed nothing, though a script would take it so. */
function holdsPicture({ pictures }: BookReport, relative: string): boolean {
  const at = relative.split(path.sep).join('/');
  return pictures.some(picture => at === '' || picture.path === at || picture.path.startsWith(`${at}/`));
}

/** Errors fail; warnings, and slips in the settings as they do, only beyond what is allowed; notes never. */
const failingOf = (report: BookReport, maxWarnings?: number): ReadonlySet<Severity> =>
  new Set(tooMany(countedIn(report), maxWarnings) ? ['error', 'warning'] : ['error']);

function exitCodeOf(report: BookReport, failing: ReadonlySet<Severity>, maxWarnings?: number): number {
  const { errors } = report.summary;
  if (failing.has('warning')) process.stderr.write(tooManyWords(countedIn(report), maxWarnings));
  return errors > 0 || failing.has('warning') ? EXIT.findings : EXIT.clean;
}

const countedIn = ({ summary, slips = [] }: BookReport): Counted => ({
  warnings: summary.warnings,
  slips: slips.length,
});
