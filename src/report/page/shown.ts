// no-unit-test: test/cli/demo.test.ts and test/cli/actions/formats.test.ts run the built program, which shows pictures
import path from 'node:path';
import { hashOf } from '../../book/hash';
import type { Pool } from '../../book/pool';
import type { BookReport, PictureReport } from '../../shared/finding';
import { type Shown, sheeted } from './book-page';

/** Long edges in pixels: among the others, and on the picture's own sheet. */
export const SMALL = 320;
const LARGE = 720;

interface Showing {
  /** Of the book, absolute. */
  root: string;
  pool: Pick<Pool, 'small'>;
  signal: AbortSignal;
  onProgress: (done: number, total: number, path: string) => void;
}

/** The pictures of a report as its page shows them, each read once more, in the order of the report. */
export function shownOf(report: BookReport, showing: Showing): Promise<Shown[]> {
  const has = sheeted(report);
  let done = 0;
  return Promise.all(
    report.pictures.map(async (picture, i) => {
      const shown = await show(picture, has[i], showing);
      showing.onProgress(++done, has.length, picture.path);
      return shown;
    }),
  );
}

async function show(
  { path: file, facts }: PictureReport,
  largeToo: boolean,
  { root, pool, signal }: Showing,
): Promise<Shown> {
  if (facts.unreadable) return { trouble: facts.unreadable.text };
  try {
    const at = path.join(root, file);
    const [first, second] = await pool.small(at, facts.page, largeToo ? [LARGE, SMALL] : [SMALL], signal);
    if ((await hashOf(at)) !== facts.sha256) return { trouble: CHANGED };
    return { small: second ?? first, large: largeToo ? first : null };
  } catch (error) {
    signal.throwIfAborted();
    return { trouble: error instanceof Error ? error.message : String(error) };
  }
}

/** It was saved meanwhile, or what was checked is a version that git keeps. */
const CHANGED = 'The file in the folder is not the one that was checked, so it is not shown.';
