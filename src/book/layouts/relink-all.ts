import { randomBytes } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import { type LayoutKind, pathFrom, type Reference, relink } from '../../layout';
import { isWithin } from '../settings/within';
import { type ResolvedLayout, resolvedLayouts } from '.';
import type { Reading } from './sources';

type LayoutSettings = Parameters<typeof resolvedLayouts>[1];

/** A line of a layout that names another picture now. */
export interface Relinked {
  /** Relative to the root. */
  file: string;
  /** From 1. */
  line: number;
  column: number;
  /** As they stand in the source. */
  from: string;
  to: string;
  /** Relative to the root. */
  picture: string;
}

/** A line or a file that was left as it was, and why. */
export interface NotRelinked {
  file: string;
  /** Null: the whole file. */
  line: number | null;
  why: string;
}

/** How the path at a place is to be written, exactly; null: it stays as it is. */
export type Exactly = (place: Pick<Relinked, 'file' | 'line' | 'column' | 'from'>) => string | null;

/** Why a line that places a picture (`from`, relative to the root) is not to place `to`; null: it is. */
export type Refusing = (kind: LayoutKind, from: string, to: string) => string | null;

interface HowToRelink {
  dryRun?: boolean;
  /** Left out: by the rules of the language, in the form that the path had. */
  exactly?: Exactly;
  refused?: Refusing;
}

export interface Relinking {
  /** File by file, in the order of the lines. */
  changes: Relinked[];
  problems: NotRelinked[];
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
  { dryRun = false, exactly, refused, ...reading }: Reading & HowToRelink = {},
): Promise<Relinking> {
  const result: Relinking = { changes: [], problems: [] };
  const { sources } = await resolvedLayouts(root, settings, reading);
  for (const source of sources) {
    reading.signal?.throwIfAborted();
    const { text, changes, problems } = relinked(source, replacements, { exactly, refused });
    result.problems.push(...problems);
    if (!changes.length) continue;
    const why = dryRun ? unwritable(source, text) : await write(root, source, text);
    if (why) result.problems.push({ file: source.path, line: null, why });
    else result.changes.push(...changes);
  }
  return result;
}

/** The text with every path that is to be replaced, from its end to its beginning so that offsets stay true. */
function relinked(
  { path: file, kind, text, placed }: ResolvedLayout,
  replacements: ReadonlyMap<string, string>,
  { exactly, refused }: Pick<HowToRelink, 'exactly' | 'refused'>,
): Relinking & { text: string } {
  const changes: Relinked[] = [];
  const problems: NotRelinked[] = [];
  let changed = text;
  let next = Number.POSITIVE_INFINITY;
  for (const { reference, found } of placed.toReversed()) {
    const picture = found.kind === 'found' ? replacements.get(found.path) : undefined;
    // one definition serves several pictures of a text
    if (found.kind !== 'found' || picture === undefined || reference.end > next) continue;
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
    const to = pathFrom(reference, found, picture);
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

const NO_SIGN =
  'The new name has letters that the encoding of this file does not. Name the picture otherwise.';
const CHANGED = 'It was changed meanwhile, and was left as it is. Do it again.';

const unwritable = (source: ResolvedLayout, text: string) => (source.encode(text) ? null : NO_SIGN);

/** Null once it is written, else why not. */
async function write(root: string, source: ResolvedLayout, text: string): Promise<string | null> {
  const bytes = source.encode(text);
  if (!bytes) return NO_SIGN;
  let temporary: string | null = null;
  try {
    // a link stays a link
    const file = await fs.realpath(source.file);
    if (!isWithin(await fs.realpath(root), file)) return 'It is a link that leads out of the book’s folder.';
    const { mode } = await fs.stat(file);
    if ((mode & 0o222) === 0) return 'It is write-protected.';
    temporary = path.join(
      path.dirname(file),
      `.${path.basename(file)}.${randomBytes(6).toString('hex')}.tmp`,
    );
    const handle = await fs.open(temporary, 'wx', mode & 0o777);
    try {
      await handle.writeFile(bytes);
      await handle.chmod(mode & 0o777);
      await handle.sync();
    } finally {
      await handle.close();
    }
    if (!(await fs.readFile(file)).equals(source.bytes)) return CHANGED;
    await fs.rename(temporary, file);
    temporary = null;
    return null;
  } catch (error) {
    return `It could not be written (${(error as NodeJS.ErrnoException).code}).`;
  } finally {
    if (temporary) await fs.rm(temporary, { force: true });
  }
}
