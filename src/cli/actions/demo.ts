// no-unit-test: test/cli/demo.test.ts runs the built program
import fs from 'node:fs/promises';
import path from 'node:path';
import { checkBook } from '../../book/check';
import { loadSettings } from '../../book/settings/load';
import { DemoError, makeDemo } from '../../demo';
import { bookJson } from '../../report/json';
import { bookPage } from '../../report/page/book-page';
import { shownOf } from '../../report/page/shown';
import { bookText } from '../../report/text/book';
import type { BookReport } from '../../shared/finding';
import { named } from '../book';
import { EXIT, Failure } from '../failure';
import { interruptible } from '../interrupt';
import { print } from '../output';
import { Progress } from '../progress';
import { withReading } from '../reading';
import { styleOf } from '../style';

const PAGE = 'preview.html';

/** Makes the demo book, checks it and writes its page. Its faults are there on purpose, so they fail nothing. */
export async function demo(dir: string, format: 'text' | 'json'): Promise<number> {
  const root = named(dir);
  const progress = new Progress(process.stderr);
  const report = await interruptible(async signal => {
    try {
      await makeDemo(root, (done, total) => progress.tell(done, total, 'drawing'));
      return await withReading(root, { cache: true }, async ({ pool, cache }) => {
        const { settings } = await loadSettings(root, {});
        if (!settings) throw new Error('the demo book has wrong settings');
        const onProgress = (done: number, total: number, file: string) => progress.tell(done, total, file);
        const report = await checkBook({ root, paths: [root], settings, pool, cache, signal, onProgress });
        const shown = await shownOf(report, { root, pool, signal, onProgress });
        await fs.writeFile(path.join(root, PAGE), bookPage('Winter on Halm', report, shown), { flag: 'wx' });
        return report;
      });
    } catch (error) {
      throw error instanceof DemoError ? new Failure(error.message) : error;
    } finally {
      progress.end();
    }
  });
  await print(format === 'json' ? bookJson(report) : text(report, dir));
  return EXIT.clean;
}

const text = (report: BookReport, dir: string) => `${bookText(report, styleOf(undefined))}
The book is in ${dir}, its faults are there on purpose.
Preview page, for a browser: ${path.join(dir, PAGE)}
Then try: evengrey check ${dir}
`;
