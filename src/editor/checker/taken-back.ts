// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import fs from 'node:fs/promises';
import path from 'node:path';
import { cacheFolder } from '../../book/cache/folder';
import { loadSettings } from '../../book/settings/load';
import { rememberRelinked } from '../../remedy/relinking/memory';
import { relinkToRenamed } from '../../remedy/relinking/renamed';
import { stillPlaced } from '../../remedy/relinking/still-placed';
import { undoRelinking } from '../../remedy/relinking/undo';
import { unmake } from '../../remedy/unmake';
import type { CheckerAnswers, LeftAlone, UndoAnswer } from '../../shared/checker-protocol';
import type { Relinked } from '../../shared/conversion';
import type { BookReport } from '../../shared/finding';
import type { OpenText, PlaceEdit } from '../../shared/layout-places';
import { rangeOf } from './layouts';

/** Which lines the editor relinked: what it did not remember here nobody could take back. */
export async function remember({ root, lines }: CheckerAnswers['relinked']['request']): Promise<null> {
  const changes = lines.map(({ file, start, from, to, result }) => ({
    ...{ file, from, to, picture: result },
    ...{ line: start.line + 1, column: start.column + 1 },
  }));
  const originals = new Map(lines.map(({ original, result }) => [result, original]));
  await rememberRelinked(await fs.realpath(root), changes, originals);
  return null;
}

/** See the question `unplace`. */
export async function unplace({
  root,
  results,
  open,
}: CheckerAnswers['unplace']['request']): Promise<CheckerAnswers['unplace']['answer']> {
  const { settings } = await loadSettings(root);
  const how = { root, open: textsOf(open), paths: results, dryRun: false };
  const undone = settings && (await undoRelinking({ ...how, settings }));
  return (undone && takenBack(undone)) ?? { edits: [], left: [] };
}

/** See the question `unmake`. */
export async function unmakeAll({
  root,
  results,
  open,
}: CheckerAnswers['unmake']['request']): Promise<CheckerAnswers['unmake']['answer']> {
  const { settings } = await loadSettings(root);
  const neededBy = settings
    ? await stillPlaced({ root, settings, open: textsOf(open) })
    : () => Promise.resolve(UNKNOWN);
  const all = await unmake(cacheFolder(), results, neededBy);
  return {
    removed: all.flatMap(({ file, reason }) => (reason === null ? path.basename(file) : [])),
    left: all.flatMap(({ file, reason }) => (reason === null ? [] : { path: path.basename(file), reason })),
  };
}

const UNKNOWN =
  'The settings cannot be used, so nobody can tell whether a layout places it: it was left where it is.';

/** See the question `renaming`. @param reportOf what a book has in it */
export async function renaming(
  { root, names, open }: CheckerAnswers['renaming']['request'],
  reportOf: (root: string) => Promise<Pick<BookReport, 'pictures'> | null>,
  signal: AbortSignal,
): Promise<CheckerAnswers['renaming']['answer']> {
  const [{ settings }, report] = await Promise.all([loadSettings(root), reportOf(root)]);
  if (!settings || !report) return { edits: [], left: [] };
  const pictures = [...new Set(report.pictures.map(({ path }) => path))];
  const how = { root, settings, pictures, signal, open: textsOf(open) };
  const { edits, left } = await relinkToRenamed(how, names);
  return { edits: edits.map(editOf), left: left.map(leftAlone) };
}

export const textsOf = (open: readonly OpenText[]): ReadonlyMap<string, string> =>
  new Map(open.map(({ path, text }) => [path, text]));

export const takenBack = ({
  changes,
  settings,
  problems,
}: Relinked): NonNullable<UndoAnswer['relinking']> => ({
  edits: [...changes, ...settings].map(editOf),
  left: problems.map(leftAlone),
});

const leftAlone = ({ file, line, why }: Relinked['problems'][number]): LeftAlone => ({
  path: line === null ? file : `${file}:${line}`,
  reason: why,
});

export const editOf = ({ file, line, column, from, to }: Relinked['changes'][number]): PlaceEdit => ({
  ...rangeOf(from, { line, column }),
  ...{ file, from, to },
});
