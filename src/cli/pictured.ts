// no-unit-test: test/cli/actions/formats.test.ts runs the built program, which writes a page
import type { Shown } from '../report/page/book-page';
import { shownOf } from '../report/page/shown';
import type { BookReport } from '../shared/finding';
import { interruptible } from './interrupt';
import { Progress } from './progress';
import { withReading } from './reading';

/** The pictures of a finished report as its page shows them, read by readers of their own. */
export const picturesOf = (report: BookReport, root: string, jobs?: number): Promise<Shown[]> =>
  interruptible(signal =>
    withReading(root, { jobs, cache: false }, async ({ pool }) => {
      const progress = new Progress(process.stderr);
      const onProgress = (done: number, total: number, file: string) => progress.tell(done, total, file);
      try {
        return await shownOf(report, { root, pool, signal, onProgress });
      } finally {
        progress.end();
      }
    }),
  );
