// no-unit-test: test/cli/actions/named.test.ts runs the built program
import fs from 'node:fs/promises';
import path from 'node:path';
import type { BookReport } from '../shared/finding';
import { type BookFiles, bookFiles } from './book-files';
import { type CheckOptions, checkBook } from './check';
import type { Found } from './discovery/discover';
import { gather, recall } from './gather';
import { reportOfChanged } from './revisions/partial';

export interface NamedOptions extends CheckOptions {
  /** Settings say which book the named paths belong to; without them nothing but these is taken for it. */
  declared: boolean;
  /** Read the others too, where they are not known. */
  whole: boolean;
}

/**
 * Checks some pictures of a book, beside the others where an earlier check knows all of them. Rejects as `checkBook`
 * does.
 */
export async function checkNamed(options: NamedOptions): Promise<BookReport> {
  const { root, paths, settings, pool, cache, declared, whole, signal, onProgress } = options;
  if (!declared && !whole) return checkAlone(options);
  const found = await bookFiles({ root, paths, settings, signal });
  const { others, placements } = await besides(found, options);
  const reading = { realRoot: await fs.realpath(root), pool, cache, signal, onProgress };
  const facts = await gather(found.files, reading);
  const known = (await recall(others, cache)) ?? (whole ? await gather(others, reading) : null);
  return reportOfChanged(
    {
      changed: [...found.files.map((file, at) => ({ path: file.path, facts: facts[at] })), ...found.missing],
      others: known && new Map(others.map((file, at) => [file.path, known[at]])),
      unchanged: others.length,
      which: 'named',
    },
    settings,
    found,
    { placements, waivers: options.waivers, signal },
  );
}

/** The pictures of a book that are not in the named paths, and where its layouts place any. */
export async function besides(
  found: Pick<BookFiles, 'files' | 'placements'>,
  { root, paths, settings, signal }: Pick<CheckOptions, 'root' | 'paths' | 'settings' | 'signal'>,
): Promise<{ others: Found[]; placements: BookFiles['placements'] }> {
  if (paths.includes(root)) return { others: [], placements: found.placements };
  const { files, placements } = await bookFiles({ root, paths: [root], settings, signal });
  const named = new Set(found.files.map(file => file.path));
  return { others: files.filter(file => !named.has(file.path)), placements };
}

/** What lies beside a picture that was named is no book as long as nobody says so. */
async function checkAlone(options: NamedOptions): Promise<BookReport> {
  const named = options.paths.map(file => path.relative(options.root, file).split(path.sep).join('/'));
  return saidAlone(await checkBook(options), named);
}

/** Says of pictures, named by their path in the report, that they were compared with no others. */
export function saidAlone(report: BookReport, named: readonly string[]): BookReport {
  const alone = report.pictures.some(picture => named.includes(picture.path));
  return alone ? { ...report, notices: [ALONE, ...report.notices] } : report;
}

const ALONE =
  'Only what is named was looked at: no evengrey.json says which book it belongs to, so it was compared with no other pictures. Name the folder of the book to have them compared.';
