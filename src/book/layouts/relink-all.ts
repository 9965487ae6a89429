import { type LayoutKind, pathFrom, type Reference, relink } from '../../layout';
import type { RelinkedLine, UnchangedLine } from '../../shared/conversion';
import { type ResolvedLayout, resolvedLayouts } from '.';
import { type Moving, pathOnceMoved } from './moved';
import { replaceText, unwritable } from './replace-text';
import type { Reading } from './sources';

type LayoutSettings = Parameters<typeof resolvedLayouts>[1];

/** How the path at a place is to be written, exactly; null: it stays as it is. */
export type Exactly = (place: Pick<RelinkedLine, 'file' | 'line' | 'column' | 'from'>) => string | null;

/** Why a line that places a picture (`from`, relative to the root) is not to place `to`; null: it is. */
export type Refusing = (kind: LayoutKind, from: string, to: string) => string | null;

interface HowToRelink {
  dryRun?: boolean;
  /** Left out: by the rules of the language, in the form that the path had. */
  exactly?: Exactly;
  refused?: Refusing;
  /** Files and folders get other names: lines are to be right then. Told by the names of before. */
  moving?: Moving;
  /** Told what a source is about to say, before it is written; says why it is not to be, null: it is. */
  before?: (changes: readonly RelinkedLine[]) => Promise<string | null>;
}

export interface Relinking {
  /** File by file, in the order of the lines. */
  changes: RelinkedLine[];
  problems: UnchangedLine[];
  /** What the layouts place then, each picture with the first line that places it (`book.md:3`). */
  places: ReadonlyMap<string, string>;
  /** Every source that was read. */
  layouts: readonly string[];
}

/**
 * Has the layouts of the book at `root` place other pictures: `replacements` by path relative to the root. Only the
 * paths are touched, every other byte stays. A source is written beside itself, flushed, and put in its place unless it
 * was changed meanwhile; so a kill leaves the old file or the new one, whole. `dryRun` writes nothing.
 */
export async function relinkAll(
  root: string,
  settings: LayoutSettings,
  replacements: ReadonlyMap<string, string>,
  { dryRun = false, exactly, refused, moving, before, ...reading }: Reading & HowToRelink = {},
): Promise<Relinking> {
  const places = new Map<string, string>();
  const { sources } = await resolvedLayouts(root, settings, reading);
  const result: Relinking = { changes: [], problems: [], places, layouts: sources.map(({ path }) => path) };
  for (const source of sources) {
    reading.signal?.throwIfAborted();
    const { text, changes, problems } = relinked(source, replacements, { exactly, refused, moving });
    result.problems.push(...problems);
    const change = dryRun
      ? unwritable
      : (...what: Parameters<typeof unwritable>) => replaceText(root, ...what);
    const held = changes.length && !dryRun ? await before?.(changes) : null;
    const why = held ?? (changes.length ? await change(source, text) : null);
    if (why) result.problems.push({ file: source.path, line: null, why });
    else result.changes.push(...changes);
    for (const [picture, line] of placesIn(source, why ? [] : changes, moving))
      if (!places.has(picture)) places.set(picture, line);
  }
  return result;
}

/** The pictures of a source and their lines, once it is changed. */
function placesIn(
  { path: file, placed }: ResolvedLayout,
  changes: readonly RelinkedLine[],
  moving: Moving = path => path,
): [string, string][] {
  const at = ({ line, column }: { line: number; column: number }) => `${line}:${column}`;
  const changed = new Map(changes.map(change => [at(change), change.picture]));
  return placed.flatMap(({ reference, found }): [string, string][] =>
    found.kind === 'found'
      ? [[changed.get(at(reference)) ?? moving(found.path), `${moving(file)}:${reference.line}`]]
      : [],
  );
}

/** The text with every path that is to be replaced, from its end to its beginning so that offsets stay true. */
function relinked(
  source: ResolvedLayout,
  replacements: ReadonlyMap<string, string>,
  { exactly, refused, moving }: Pick<HowToRelink, 'exactly' | 'refused' | 'moving'>,
): Pick<Relinking, 'changes' | 'problems'> & { text: string } {
  const { path: file, kind, text, placed } = source;
  const changes: RelinkedLine[] = [];
  const problems: UnchangedLine[] = [];
  let changed = text;
  let next = Number.POSITIVE_INFINITY;
  for (const { reference, found } of placed.toReversed()) {
    // one definition serves several pictures of a text
    if (found.kind !== 'found' || reference.end > next) continue;
    const moved = moving ? pathOnceMoved(source, { reference, found }, moving) : null;
    const picture = moved?.picture ?? replacements.get(found.path);
    if (picture === undefined) continue;
    next = reference.start;
    const { line, column } = reference;
    const from = text.slice(reference.start, reference.end);
    if (exactly) {
      const to = exactly({ file, line, column, from });
      if (to === null) continue;
      changed = changed.slice(0, reference.start) + to + changed.slice(reference.end);
      changes.push({ file, line, column, picture, from, to });
      continue;
    }
    const why = refused?.(kind, found.path, picture) ?? null;
    if (why) {
      problems.push({ file, line, why });
      continue;
    }
    const to = moved ? moved.path : pathFrom(reference, found, picture);
    if (to === null) {
      problems.push({ file, line, why: `"${picture}" cannot be named here: ${around(reference)}.` });
      continue;
    }
    const before = changed.length;
    changed = relink(changed, reference, to);
    const end = reference.end + changed.length - before;
    changes.push({ file, line, column, picture, from, to: changed.slice(reference.start, end) });
  }
  return { text: changed, changes: changes.reverse(), problems: problems.reverse() };
}

const around = ({ before, after }: Reference): string =>
  before || after
    ? `the layout puts "${before}" before and "${after}" behind it`
    : 'it lies above the root that "/" stands for';
