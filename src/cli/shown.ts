// no-unit-test: test/cli/demo.test.ts and test/cli/actions/formats.test.ts run the built program, which shows pictures
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { Pool } from '../book/pool';
import { type Shown, sheeted } from '../report/page/book-page';
import type { Image } from '../report/page/image';
import type { BookReport, PictureReport } from '../shared/finding';
import type { Raster } from '../shared/reader-protocol';

/** Long edges in pixels: among the others, and on the picture's own sheet. */
const SMALL = 320;
const LARGE = 720;

interface Showing {
  /** Of the book, absolute. */
  root: string;
  pool: Pick<Pool, 'raster'>;
  signal: AbortSignal;
  onProgress: (done: number, total: number, path: string) => void;
}

/** The pictures of a report as its page shows them, each read once more, in the order of the report. */
export function shownOf(report: BookReport, showing: Showing): Promise<Shown[]> {
  const has = sheeted(report);
  let done = 0;
  return Promise.all(
    report.pictures.map(async (picture, i) => {
      const shown = await show(picture, has[i] ? LARGE : SMALL, showing);
      showing.onProgress(++done, has.length, picture.path);
      return shown;
    }),
  );
}

async function show(
  { path: file, facts }: PictureReport,
  edge: number,
  { root, pool, signal }: Showing,
): Promise<Shown> {
  if (facts.unreadable) return { trouble: facts.unreadable.text };
  try {
    const at = path.join(root, file);
    const raster = await pool.raster(at, facts.page, edge, signal);
    if ((await hashOf(at)) !== facts.sha256) return { trouble: CHANGED };
    return { small: await light(raster, SMALL), large: edge === LARGE ? await light(raster, LARGE) : null };
  } catch (error) {
    signal.throwIfAborted();
    return { trouble: error instanceof Error ? error.message : String(error) };
  }
}

/** It was saved meanwhile, or what was checked is a version that git keeps. */
const CHANGED = 'The file in the folder is not the one that was checked, so it is not shown.';

async function hashOf(file: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(fs.createReadStream(file), hash);
  return hash.digest('hex');
}

/** Smaller in bytes for a page that carries all pictures: JPEG, with full colour since marks may be tiny, where nothing is seen through. */
export async function light({ png, fullWidth, fullHeight }: Raster, edge: number): Promise<Image> {
  // only pages show pictures: no other format needs the decoder in this process
  const { default: sharp } = await import('sharp');
  const picture = sharp(png).resize({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true });
  const { isOpaque } = await sharp(png).stats();
  if (!isOpaque) return { type: 'image/png', bytes: await picture.png().toBuffer(), fullWidth, fullHeight };
  const bytes = await picture.removeAlpha().jpeg({ quality: 85, chromaSubsampling: '4:4:4' }).toBuffer();
  return { type: 'image/jpeg', bytes, fullWidth, fullHeight };
}
