// no-unit-test: test/remedy/batch.test.ts goes through every way of it
import fs from 'node:fs/promises';
import path from 'node:path';
import { type BookFiles, bookFiles } from '../book/book-files';
import type { FactsCache } from '../book/cache/cache';
import type { Discovery, Found } from '../book/discovery/discover';
import { passedOverNotices } from '../book/discovery/passed-over';
import { gather } from '../book/gather';
import { bookPictures, standings } from '../book/pictures';
import type { Pool } from '../book/pool';
import type { Settings } from '../book/settings/settings';
import { isWithin } from '../book/settings/within';
import type { PictureFacts } from '../shared/picture';
import type { RemedyWish } from '../shared/remedy';
import { History } from './keep/history';
import { fileStoresLuminance } from './luminance';
import { copiesAmong } from './plan/skips';
import type { Asked, Place } from './plan/types';
import { earlierResults, originalsBy, rememberedOriginals } from './relinking/earlier';
import { relinkedIn } from './relinking/memory';

export interface Selecting {
  root: string;
  /** Absolute; folders are searched, files are taken as they are named. */
  paths: readonly string[];
  settings: Settings;
  pool: Pick<Pool, 'facts'>;
  cache: FactsCache | null;
  place: Place;
  wish: Pick<RemedyWish, 'greyProfile'>;
  /** Whose colour, tone or one bit may go though nobody said so: all, those that are named by themselves, or none. */
  meant: 'all' | 'named' | 'none';
  /**
   * Texts of layouts and settings that an editor has open and has not saved (see `Reading`). With them no layout is
   * written: its lines are only told.
   */
  open?: ReadonlyMap<string, string>;
  signal?: AbortSignal;
  onProgress?: (done: number, total: number, path: string) => void;
}

/** A file of the book by its true path. */
export interface Target extends Found {
  named: boolean;
  link: string | null;
}

export interface Selected {
  pictures: Asked[];
  notices: string[];
  placements: BookFiles['placements'];
  /** Results of a picture that lines place, relative to the root. */
  earlierOf: (asked: Pick<Asked, 'path' | 'link'>) => readonly string[];
}

/**
 * The pictures that are meant by the named paths, of a folder those of the book, sorted by path, each file once however
 * often and by whichever link it was named; what was left out; where layouts place what, by the paths they name; and
 * which of that are earlier results of a picture.
 */
export async function select(how: Selecting): Promise<Selected> {
  const realRoot = await fs.realpath(how.root);
  const found = await bookFiles(how);
  const remembered = rememberedOriginals(await relinkedIn(realRoot));
  const originalsOf = originalsBy(remembered, realRoot, how.place);
  const { files, leftOut } = ofTheBook(found, originalsOf);
  const { targets, notices } = await targetsOf({ ...found, files }, how);
  if (leftOut.length) notices.push(unplacedNotice(leftOut));
  notices.push(...passedOverNotices(found.passedOver ?? []));
  const pages = await gather(targets, { ...how, realRoot });
  const standing = standings(how.settings);
  const history = new History();
  const stats = await Promise.all(targets.map(({ file }) => fs.stat(file).catch(() => null)));
  const met = new Map<string, number>();
  for (const stat of stats) if (stat) met.set(fileId(stat), (met.get(fileId(stat)) ?? 0) + 1);
  const all = await Promise.all(
    targets.map(async ({ path: at, file, named, link }, i): Promise<Asked> => {
      const [facts] = pages[i];
      const stat = stats[i];
      const [{ intent, intentStated }] = bookPictures(at, pages[i], standing(at));
      const replaced = await history.resultAt(file, facts.sha256);
      return {
        ...{ path: at, file, named, link },
        meant: how.meant === 'all' || (how.meant === 'named' && named),
        pages: pages[i],
        luminance: isGreyJpeg(facts) && (await fileStoresLuminance(file, how.wish.greyProfile)),
        remedied: facts.remedied,
        ...{ intent, intentStated },
        isProtected: stat !== null && (stat.mode & 0o222) === 0,
        otherNames: stat ? stat.nlink - met.get(fileId(stat))! : 0,
        namesMeant: stat ? met.get(fileId(stat))! : 1,
        replacedBy: replaced?.entry.wish ?? null,
      };
    }),
  );
  const copies = copiesAmong(all, remembered);
  if (copies.size)
    notices.push(
      `${many(copies.size)} left out: results of earlier conversions of the others. Name one by itself to have it converted all the same.`,
    );
  return {
    ...{ pictures: all.filter(asked => !copies.has(asked)), notices, placements: found.placements },
    earlierOf: earlierResults(found.placements.keys(), originalsOf),
  };
}

/** The same of all names (hard links) of one file. */
const fileId = ({ dev, ino }: { dev: number; ino: number }) => `${dev} ${ino}`;

/** Of others it is not certain before they are converted what can stay. */
const isGreyJpeg = ({ format, encoding }: PictureFacts) => format === 'jpeg' && GREYS.has(encoding);

/** Grey, or so near to it that only colour has to go. */
const GREYS = new Set<PictureFacts['encoding']>([
  'single-channel',
  'rgb-neutral',
  'rgb-residual',
  'rgb-toned',
]);

/**
 * What a check takes for the book's, and the originals of results that layouts place: those are converted anew from
 * them.
 */
function ofTheBook(
  { all, files, placements }: Pick<BookFiles, 'all' | 'files' | 'placements'>,
  originalsOf: (result: string) => readonly string[],
) {
  const placed = new Set(files);
  const results = [...files.map(({ path }) => path), ...placements.keys()];
  const originals = new Set(results.flatMap(originalsOf));
  const isMeant = (found: Found) => placed.has(found) || originals.has(found.path);
  return { files: all.filter(isMeant), leftOut: all.filter(found => !isMeant(found)) };
}

const unplacedNotice = (leftOut: readonly Found[]): string =>
  `${many(leftOut.length)} left out, since no layout places ${leftOut.length === 1 ? 'it' : 'them'}: ${leftOut.map(({ path }) => path).join(', ')}. Name a picture by itself, or list it under "pictures" in evengrey.json.`;

/** The files meant of those found, without what lies in the output folder. */
export async function targetsOf(
  { files, notEntered }: Pick<Discovery, 'files' | 'notEntered'>,
  how: Pick<Selecting, 'root' | 'paths' | 'place'>,
): Promise<{ targets: Target[]; notices: string[] }> {
  const realRoot = await fs.realpath(how.root);
  const named = new Set(how.paths);
  const targets = new Map<string, Target>();
  let inOutput = 0;
  for (const found of files) {
    const isNamed = named.has(found.file);
    const target = await trueTarget(found, realRoot, isNamed);
    if (!isNamed && how.place.kind === 'folder' && isWithin(how.place.folder, target.file)) inOutput++;
    else targets.set(target.file, merged(target, targets.get(target.file)));
  }
  const notices = notEntered.map(folder => `"${folder.path}" was left out: ${folder.why}.`);
  if (inOutput) notices.push(`${many(inOutput)} left out, in the folder for the results.`);
  return { targets: [...targets.values()].sort((x, y) => (x.path < y.path ? -1 : 1)), notices };
}

/** A file that was met twice: it was named if it was once, and a link that leads to it is told. */
const merged = (target: Target, before: Target | undefined): Target =>
  before
    ? {
        ...target,
        named: target.named || before.named,
        link: target.link ?? before.link,
      }
    : target;

const many = (count: number) => (count === 1 ? '1 picture was' : `${count} pictures were`);

async function trueTarget(found: Found, realRoot: string, named: boolean): Promise<Target> {
  const file = found.obstacle ? null : await fs.realpath(found.file).catch(() => null);
  if (file === null) return { ...found, named, link: null };
  const at = path.relative(realRoot, file).split(path.sep).join('/');
  return { ...found, path: at, file, named, link: at === found.path ? null : found.path };
}
