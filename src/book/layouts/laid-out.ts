import { UnreadableError } from '../../picture/header/unreadable';
import { unreadableFacts } from '../../picture/unreadable-facts';
import type { PictureFacts } from '../../shared/picture';
import type { Found } from '../discovery/discover';
import { namesPicture } from '../discovery/extensions';
import { nearPicture } from '../near-picture';
import { originalName } from '../original-names';
import type { Settings } from '../settings/settings';
import type { BookLayouts, Misplaced, Missing, Placement } from '.';

/** What the layouts make of the pictures that were found. */
export interface LaidOut {
  /** The pictures of the book. */
  files: Found[];
  /** Placed, and not there: one entry a picture. */
  missing: { path: string; facts: PictureFacts[] }[];
  /** Where each picture is placed, there or not, by its path, in the order of the book; those of style sheets follow. */
  placements: ReadonlyMap<string, readonly Placement[]>;
  /** Pictures that no layout places, and a sentence of them; null where there are none, or layouts place nothing. */
  unplaced: { paths: string[]; told: string } | null;
  /** Found, and not in the book, since layouts place others. */
  notInBook: string[];
  /** There and placed, and not looked at, since settings or an ignore file leave them out. */
  leftOut: string[];
  /** Plain sentences, for a person to know. */
  notices: string[];
}

export interface Asked {
  root: string;
  /** Absolute: those that were named. */
  paths: readonly string[];
  settings: Pick<Settings, 'pictures'>;
  /** Pictures that are there and belong to somebody else, so that nobody left them out. */
  beyond?: ReadonlySet<string>;
}

/** So many pictures are named. */
const NAMED = 6;

/**
 * The pictures that layouts place are the book where the settings name none; a file that a person names is looked at
 * all the same. Pure.
 * @param found the pictures in the named paths, sorted by path
 */
export function laidOut(
  found: readonly Found[],
  all: BookLayouts,
  { root, paths, settings, beyond }: Asked,
): LaidOut {
  const placements = byPicture(all.placements);
  const whole = paths.includes(root);
  const named = new Set(paths);
  const used = found.filter(({ path, file }) => placements.has(path) || named.has(file));
  const unused = found.filter(({ path }) => !placements.has(path));
  const decides = settings.pictures === null && all.placements.some(({ picture }) => namesPicture(picture));
  const files = decides ? used : [...found];
  const there = new Set(found.map(({ path }) => path));
  const replacing = decides && whole ? resultsByOriginal(placements.keys()) : new Map<string, string>();
  const replacedBy = (path: string) => replacing.get(path) ?? replacing.get(originalName(path) ?? path);
  const replaced = unused.filter(({ path }) => replacedBy(path));
  const idle = unused.filter(({ path }) => !replacedBy(path));
  const unplaced = whole ? unplacedIn(idle, all, decides) : null;
  const missing = all.missing.filter(({ path }) => mayBePicture(path));
  const leftOut = [...placements.keys()].filter(
    path => !there.has(path) && namesPicture(path) && !beyond?.has(path),
  );
  return {
    files,
    missing: missingPictures(
      missing.filter(({ path }) => paths.some(asked => covers(root, asked, path))),
      idle.map(({ path }) => path),
    ),
    placements: byPicture(withMissing(all.placements, missing)),
    unplaced,
    leftOut: whole ? leftOut : [],
    notInBook: decides ? unused.flatMap(({ path, file }) => (named.has(file) ? [] : path)) : [],
    notices: whole
      ? [
          ...(settings.pictures === null ? unreadNotices(all) : []),
          ...troubleNotices(all),
          ...replacedNotice(replaced.map(({ path }) => `${path} by ${replacedBy(path)}`)),
          ...(unplaced ? [unplaced.told] : []),
          ...leftOutNotice(leftOut, placements),
        ]
      : [],
  };
}

function byPicture(all: readonly Placement[]): Map<string, Placement[]> {
  const placements = new Map<string, Placement[]>();
  for (const placement of all) {
    const others = placements.get(placement.picture);
    if (others) others.push(placement);
    else placements.set(placement.picture, [placement]);
  }
  return placements;
}

/** A picture that is missing has its place in the book all the same. */
function withMissing(placements: readonly Placement[], missing: readonly Missing[]): Placement[] {
  const all: Placement[] = [];
  let next = 0;
  for (const { path: picture, folders: _, behind, ...at } of missing) {
    all.push(...placements.slice(next, behind), { ...at, picture });
    next = behind;
  }
  return [...all, ...placements.slice(next)];
}

const covers = (root: string, asked: string, path: string): boolean => {
  const full = `${root}/${path}`;
  return asked === root || full === asked || full.startsWith(`${asked}/`);
};

/** By their names: what a conversion beside its picture is called. */
function resultsByOriginal(placed: Iterable<string>): Map<string, string> {
  const results = new Map<string, string>();
  for (const path of placed) {
    const original = originalName(path);
    if (original && !results.has(original)) results.set(original, path);
  }
  return results;
}

/** Originals of results that layouts place, and earlier results: nobody is to put them back for want of a word. */
function replacedNotice(pairs: readonly string[]): string[] {
  if (!pairs.length) return [];
  const what =
    pairs.length === 1
      ? 'One picture is replaced by a converted copy that layouts place, and is'
      : `${pairs.length} pictures are replaced by converted copies that layouts place, and are`;
  return [`${what} not judged: ${list(pairs)}.`];
}

/** A name without extension is a picture's too: LaTeX leaves it out. */
const mayBePicture = (path: string) => namesPicture(path) || !/\.[^./]*$/.test(path);

/** @param free pictures that no layout places: one of them may be meant */
function missingPictures(missing: readonly Missing[], free: readonly string[]): LaidOut['missing'] {
  const byPath = new Map<string, Missing[]>();
  for (const place of missing) if (!byPath.get(place.path)?.push(place)) byPath.set(place.path, [place]);
  return [...byPath].map(([path, places]) => {
    const more = places.length > 2 ? ` and ${places.length - 2} more` : '';
    const lines = places.slice(0, 2).map(lineOf).join(', ');
    const folders = [...new Set(places.flatMap(({ folders }) => folders))];
    const where = folders.length > 1 ? ` in ${folders.map(folder => `"${folder || '.'}"`).join(' or ')}` : '';
    const there = where ? 'into one of these folders' : 'there';
    const near = nearPicture(path, free);
    const meant = near === null ? '' : ` Did you mean "${near}"?`;
    const text = `It stays blank on the page: ${lines}${more} ${places.length === 1 ? 'places' : 'place'} it, and there is no such file${where}. Put the picture ${there}, or correct the path.${meant}`;
    return { path, facts: [unreadableFacts(new UnreadableError('missing', text), '')] };
  });
}

/** Once a source. */
function unreadNotices({ unread }: BookLayouts): string[] {
  const first = new Map(unread.toReversed().map(place => [place.file, place]));
  return [...first.values()]
    .reverse()
    .map(
      place => `${lineOf(place)} places pictures in a way that cannot be read: name them under "pictures".`,
    );
}

/** Of a line that takes in a text that is not there. */
export const notThereNotice = ({ file, line, path }: Omit<Misplaced, 'column'>): string =>
  `Pages may be missing: ${lineOf({ file, line })} takes in "${path}", and there is no such file in the book's folder, so the pictures that it places were not checked. Put it back, or correct the line.`;

function troubleNotices({ outside, notRead, notThere }: BookLayouts): string[] {
  return [
    ...notThere.map(notThereNotice),
    ...notRead.map(
      ({ path, why }) => `"${path}" was not read as a layout: ${why[0].toLowerCase()}${why.slice(1)}`,
    ),
    ...outside.map(
      place =>
        `${lineOf(place)} places "${place.path}", which lies outside the book's folder and was not looked at. Copy the picture into the folder.`,
    ),
  ];
}

function unplacedIn(
  unused: readonly Found[],
  { placements, unread }: BookLayouts,
  decides: boolean,
): LaidOut['unplaced'] {
  if (!unused.length || !placements.length) return null;
  const paths = unused.map(({ path }) => path);
  const one = unused.length === 1;
  const what = one ? 'One picture is' : `${unused.length} pictures are`;
  const then = decides ? notChecked(one, unread.length > 0) : '';
  const none = unread.length ? 'no line that can be read' : 'no layout';
  const told = `${what} placed by ${none} (${list([...new Set(placements.map(({ file }) => file))])}): ${list(paths)}.${then}`;
  return { paths, told };
}

/** `inDoubt`: a line that cannot be read may place it. */
function notChecked(one: boolean, inDoubt: boolean): string {
  const [they, are, were, them] = one ? ['It', 'is', 'was', 'it'] : ['They', 'are', 'were', 'them'];
  const left = inDoubt ? `${they} ${were}` : `${they} ${are} not in the book then, and ${were}`;
  return ` ${left} not checked: name ${them} under "pictures" if ${they.toLowerCase()} ${are} printed.`;
}

/** Of pictures that are placed and not looked at, each with its first line. */
export function leftOutNotice(
  leftOut: readonly string[],
  placements: ReadonlyMap<string, readonly Placement[]>,
): string[] {
  if (!leftOut.length) return [];
  const named = leftOut.map(path => `${path} (${lineOf(placements.get(path)![0])})`);
  const one = leftOut.length === 1;
  return [
    `${one ? 'One picture is' : `${leftOut.length} pictures are`} placed by a layout and ${one ? 'was' : 'were'} not checked, left out by "pictures", "ignore" or an ignore file: ${list(named)}.`,
  ];
}

const lineOf = ({ file, line }: { file: string; line: number }) => `${file}:${line}`;

const list = (names: readonly string[]): string =>
  names.slice(0, NAMED).join(', ') + (names.length > NAMED ? ` and ${names.length - NAMED} more` : '');
