// no-unit-test: test/cli/actions/compare.test.ts runs the built program
import path from 'node:path';
import { compareRevisions } from '../../book/revisions/compare';
import { comparisonJson } from '../../report/compare/json';
import { comparisonMarkdown } from '../../report/compare/markdown';
import { comparisonText } from '../../report/compare/text';
import type { Comparison } from '../../shared/comparison';
import { rootOf } from '../book';
import { conditionsOf } from '../conditions';
import { EXIT } from '../failure';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { Progress } from '../progress';
import { withReading } from '../reading';
import { revisionFailure } from '../revision-failure';
import { styleOf } from '../style';
import type { CompareVerbOptions } from '../verbs/compare';

/** Compares two revisions of a book, writes what was found and gives the exit code. */
export async function compare(
  base: string,
  head: string | null,
  options: CompareVerbOptions,
): Promise<number> {
  const conditions = conditionsOf(options);
  if (options.output !== undefined) await refuse(options.output);
  const root = await rootOf([path.resolve(options.book)]);
  const { mergeBase: fromMergeBase, whole = false } = options;
  const comparison = await interruptible(signal =>
    withReading(root, options, async ({ pool, cache }) => {
      const progress = new Progress(process.stderr);
      try {
        return await compareRevisions({
          ...{ root, base, head, fromMergeBase, conditions, whole, pool, cache, signal },
          onProgress: (done, total) => progress.tell(done, total, 'from git'),
        });
      } catch (error) {
        throw revisionFailure(error, root, 'compared');
      } finally {
        progress.end();
      }
    }),
  );
  await writeResult(written(comparison, options), options.output);
  return exitCodeOf(comparison, options.maxWarnings);
}

function written(comparison: Comparison, { format, output }: CompareVerbOptions): string {
  if (format === 'json') return comparisonJson(comparison);
  return format === 'markdown' ? comparisonMarkdown(comparison) : comparisonText(comparison, styleOf(output));
}

/** New errors fail; new warnings only beyond what is allowed; what was there before never. */
function exitCodeOf({ summary }: Comparison, maxWarnings = Number.POSITIVE_INFINITY): number {
  const { errors, warnings } = summary.new;
  if (warnings > maxWarnings) {
    const many = warnings === 1 ? '1 new warning is' : `${warnings} new warnings are`;
    process.stderr.write(`${many} more than --max-warnings ${maxWarnings} allows.\n`);
  }
  return errors > 0 || warnings > maxWarnings ? EXIT.findings : EXIT.clean;
}
