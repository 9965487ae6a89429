import { candidates, type Include, normalised, type Reference, type Resolution, resolve } from '../../layout';
import { compare } from '../discovery/discover';
import { breather } from '../lanes';
import type { Settings } from '../settings/settings';
import { parseDocuments } from './documents';
import { existingFiles } from './existing';
import { joinMissing } from './missing';
import { inReadingOrder } from './reading-order';
import { type LayoutFile, type LayoutFiles, layoutFiles, type Reading } from './sources';
import { takenIn } from './taken-in';

/** A picture that a layout places. */
export interface Placement {
  /** The source, relative to the root. */
  file: string;
  /** Of its path in the source, from 1. */
  line: number;
  column: number;
  /** The picture, relative to the root. */
  picture: string;
  size: Reference['size'];
  /** A style sheet names it, which says nothing of where in the book it stands. */
  inStyleSheet?: true;
}

/** A line that places or takes in what is not there, or what may not be looked at. */
export interface Misplaced {
  file: string;
  line: number;
  column: number;
  /** `missing`: where the picture was expected, relative to the root; else as it is written. */
  path: string;
}

export interface Missing extends Misplaced {
  /** Folders in which the text has it looked for, relative to the root; none: it names one place. */
  folders: readonly string[];
  /** So many placements come before it in the book. */
  behind: number;
  size: Reference['size'];
  inStyleSheet?: true;
}

export interface BookLayouts {
  /** The sources that were read. */
  files: string[];
  /** In the order of the book; those of style sheets follow. */
  placements: Placement[];
  /** In the order of the book; those of style sheets follow. */
  missing: Missing[];
  /** Out of the book's folder; file by file in the order of their lines. */
  outside: Misplaced[];
  notRead: { path: string; why: string }[];
  /** Lines that take in a layout that is not there; `path`: as they have it. File by file in the order of their lines. */
  notThere: Misplaced[];
  /** Lines that place pictures which cannot be told from the text, in the order of the files. */
  unread: { file: string; line: number }[];
}

type LayoutSettings = Pick<Settings, 'layouts' | 'ignore' | 'textWidth'>;

/** What layouts place, and what they cannot. */
export function placementsOf({ sources, notRead, named }: Resolved): BookLayouts {
  const all: BookLayouts = {
    files: sources.map(({ path }) => path),
    placements: [],
    missing: [],
    outside: [],
    notRead,
    notThere: sources.flatMap(({ path: file, notThere }) => notThere.map(one => ({ file, ...one }))),
    unread: sources.flatMap(({ path: file, unread }) => unread.map(line => ({ file, line }))),
  };
  for (const { path: file, placed } of sources)
    for (const { reference, found } of placed) {
      const { line, column } = reference;
      if (found.kind === 'outside') all.outside.push({ file, line, column, path: reference.path });
    }
  const texts = sources.map(({ path, placed, includes }) => ({
    ...{ path, includes },
    items: placed
      .map(one => ({ ...one, start: one.reference.placed ?? one.reference.start }))
      .sort((x, y) => x.start - y.start),
  }));
  const styled: Placement[] = [];
  const styledMissing: Missing[] = [];
  for (const { source, item } of inReadingOrder(texts, named)) {
    const { reference, found } = item;
    const { line, column, size } = reference;
    const inStyleSheet = reference.writing.at(-1)?.startsWith('css') && ({ inStyleSheet: true } as const);
    const at = { file: source.path, line, column, size, ...inStyleSheet };
    if (found.kind === 'found') (inStyleSheet ? styled : all.placements).push({ ...at, picture: found.path });
    else if (found.kind === 'missing') {
      const { path, folders } = found;
      const behind = all.placements.length;
      (inStyleSheet ? styledMissing : all.missing).push({ ...at, path, folders, behind });
    }
  }
  all.placements.push(...styled);
  all.missing.push(...styledMissing.map(one => ({ ...one, behind: all.placements.length })));
  return all;
}

/** A layout source, and where each of its pictures lies. */
export interface ResolvedLayout extends LayoutFile {
  /** Of the others those that it takes in, by path. */
  includes: Include[];
  /** Folders that its tool may be started in, beside its own. */
  mainFolders: readonly string[];
  /** Lines that place pictures nobody can name. */
  unread: readonly number[];
  /** Lines that take in a layout that is not there. */
  notThere: readonly Omit<Misplaced, 'file'>[];
  placed: { reference: Reference; found: Resolution }[];
}

export interface Resolved {
  sources: ResolvedLayout[];
  /** Those that place nothing, and may hand something on. */
  around: LayoutFile[];
  notRead: BookLayouts['notRead'];
  /** Patterns of the settings that name them, in their order; null: all are read. */
  named: readonly string[] | null;
}

/** The layouts of the book at `root` (absolute), each with the pictures that it places, in the order of its lines. */
export async function resolvedLayouts(
  root: string,
  settings: LayoutSettings,
  reading: Reading = {},
): Promise<Resolved> {
  const found = await layoutFiles(root, settings, reading);
  return resolvedIn(found, asked => existingFiles(root, asked), settings, reading.signal);
}

/**
 * The pictures of layout sources, wherever these come from. `existingOf` says which of some paths (relative to the root)
 * are there: it gives a path as it is spelt, or null.
 */
export async function resolvedIn(
  { files: all, notRead }: LayoutFiles,
  existingOf: (asked: ReadonlySet<string>) => Promise<(path: string) => string | null>,
  settings: Pick<LayoutSettings, 'layouts' | 'textWidth'>,
  signal?: AbortSignal,
): Promise<Resolved> {
  const breathe = breather();
  // those that are listed come first: what they say goes before
  const texts = [...all.filter(file => !file.around), ...all.filter(file => file.around)];
  const parsed = await parseDocuments(texts, settings.textWidth ?? undefined, breathe);
  signal?.throwIfAborted();
  const read = texts
    .map((file, at) => ({ file, ...parsed[at] }))
    .sort((x, y) => compare(x.file.path, y.file.path));
  const taken = takenIn(read, settings.layouts ?? []);
  const isAround = (file: LayoutFile) => file.around && !taken.has(file.path);
  const placing = read.filter(({ file }) => !isAround(file));
  const asked = new Set<string>();
  for (const { file, references, notAmong, mainFolders } of placing) {
    const { path, kind } = file;
    for (const { places } of notAmong) for (const place of places) asked.add(place);
    for (const reference of references) {
      const places = candidates(reference, path, kind, { mainFolders });
      if (places !== 'elsewhere') for (const { path } of places) asked.add(normalised(path) ?? '');
    }
  }
  asked.delete('');
  const existing = await existingOf(asked);
  const sources = placing.map(({ file, references, notAmong, ...rest }) => {
    const placed = references.map(reference => {
      const found = resolve(reference, file.path, file.kind, path => existing(path) !== null, {
        mainFolders: rest.mainFolders,
      });
      return { reference, found: found.kind === 'found' ? { ...found, path: existing(found.path)! } : found };
    });
    const notThere = notAmong
      .filter(({ places }) => places.every(place => existing(place) === null))
      .map(({ path, line, column }) => ({ path, line, column }));
    return { ...file, ...rest, notThere, placed };
  });
  joinMissing(sources);
  const wanted = new Set(placing.flatMap(({ notAmong }) => notAmong.flatMap(({ places }) => places)));
  const concerned = notRead.filter(({ path, around }) => !around || wanted.has(path));
  return { sources, around: all.filter(isAround), notRead: concerned, named: settings.layouts };
}
