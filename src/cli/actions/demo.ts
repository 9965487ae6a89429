// no-unit-test: test/cli/demo.test.ts runs the built program
import fs from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { checkBook } from '../../book/check';
import type { Pool } from '../../book/pool';
import { loadSettings } from '../../book/settings/load';
import { DemoError, makeDemo } from '../../demo';
import { bookJson } from '../../report/json';
import { bookPage, type Image, type Shown } from '../../report/page/book-page';
import { bookText } from '../../report/text/book';
import type { BookReport, PictureReport } from '../../shared/finding';
import type { Raster } from '../../shared/reader-protocol';
import { EXIT, Failure } from '../failure';
import { interruptible } from '../interrupt';
import { writeResult } from '../output';
import { Progress } from '../progress';
import { withReading } from '../reading';
import { styleOf } from '../style';

const PAGE = 'preview.html';
/** Long edges in pixels: among the others, and on the picture's own sheet. */
const SMALL = 320;
const LARGE = 720;

/** Makes the demo book, checks it and writes its page. Its faults are there on purpose, so they fail nothing. */
export async function demo(dir: string, format: 'text' | 'json'): Promise<number> {
  const root = path.resolve(dir);
  const progress = new Progress(process.stderr);
  const report = await interruptible(async signal => {
    try {
      await makeDemo(root, (done, total) => progress.tell(done, total, 'drawing'));
      return await withReading(root, { cache: true }, async ({ pool, cache }) => {
        const { settings } = await loadSettings(root, {});
        if (!settings) throw new Error('the demo book has wrong settings');
        const report = await checkBook({
          ...{ root, paths: [root], settings, pool, cache, signal },
          onProgress: (done, total, file) => progress.tell(done, total, file),
        });
        const shown: Shown[] = [];
        for (const of of report.pictures) shown.push(await show(of, root, pool, signal));
        await fs.writeFile(path.join(root, PAGE), bookPage('Winter on Halm', report, shown), { flag: 'wx' });
        return report;
      });
    } catch (error) {
      throw error instanceof DemoError ? new Failure(error.message) : error;
    } finally {
      progress.end();
    }
  });
  await writeResult(format === 'json' ? bookJson(report) : text(report, dir), undefined);
  return EXIT.clean;
}

async function show(
  { path: file, facts }: PictureReport,
  root: string,
  pool: Pool,
  signal: AbortSignal,
): Promise<Shown> {
  if (facts.unreadable) return { trouble: facts.unreadable.text };
  try {
    const at = async (edge: number) =>
      light(await pool.raster(path.join(root, file), facts.page, edge, signal));
    return { small: await at(SMALL), large: await at(LARGE) };
  } catch (error) {
    return { trouble: error instanceof Error ? error.message : String(error) };
  }
}

/** Smaller in bytes for a page that carries all pictures: JPEG, with full colour since marks may be tiny, where nothing is seen through. */
async function light({ png, fullWidth, fullHeight }: Raster): Promise<Image> {
  const picture = sharp(png);
  const { isOpaque } = await picture.stats();
  if (!isOpaque) return { type: 'image/png', bytes: png, fullWidth, fullHeight };
  const bytes = await picture.removeAlpha().jpeg({ quality: 85, chromaSubsampling: '4:4:4' }).toBuffer();
  return { type: 'image/jpeg', bytes, fullWidth, fullHeight };
}

const text = (report: BookReport, dir: string) => `${bookText(report, styleOf(undefined))}
The book is in ${dir}, its faults are there on purpose.
Preview page, for a browser: ${path.join(dir, PAGE)}
Then try: evengrey check ${dir}
`;
