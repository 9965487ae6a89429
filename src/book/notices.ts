import type { BookPicture } from '../shared/finding';
import type { Target } from '../shared/target';
import type { Discovery } from './discovery/discover';
import { passedOverNotices } from './discovery/passed-over';
import { doubtNotices, doubtsOf } from './doubts';
import { type Idle, idleNotice } from './idle-settings';
import { outdatedNotices } from './outdated';
import { replacedNotices } from './replaced';
import type { Settings } from './settings/settings';
import { severalPagesNotices } from './several-pages';
import { unsizedNotices } from './unsized';

/** What a search tells beside the files it found. */
export interface Searched extends Omit<Discovery, 'files'> {
  /** What the layouts have made of it, in sentences. */
  ofLayouts?: readonly string[];
  /** Patterns of `layouts` that match none that was found. */
  idleLayouts?: readonly string[];
  /** Pictures in the folder that are not in the book, since layouts place others. */
  notInBook?: readonly string[];
  /** Those of them that no conversion explains, and more where nobody says what the book is; see `LaidOut`. */
  unplaced?: { paths: readonly string[] } | null;
}

/**
 * What was not looked at, and settings that concern nothing or cannot be: no verdicts, but a person would want to know.
 * @param pictures those that were looked at
 * @param idle what the settings say in vain; null where not all of the book was looked at
 */
export function noticesOf(
  { notEntered, ignored, innerBooks = [], passedOver = [], ofLayouts = [] }: Searched,
  settings: Settings,
  pictures: readonly BookPicture[],
  idle: readonly Idle[] | null,
): string[] {
  return [
    ...notEntered.map(({ path, why }) => `"${path}" was not searched: ${why}.`),
    ...passedOverNotices(passedOver),
    ...(ignored
      ? [
          `${ignored} ${ignored === 1 ? 'picture is' : 'pictures are'} left out by ignore files (.gitignore, .evengreyignore).`,
        ]
      : []),
    ...innerBooks.flatMap(folder => mixedIn(folder, pictures)),
    ...ofLayouts,
    ...settings.targets.flatMap(doubtNotices),
    ...replacedNotices(pictures),
    ...outdatedNotices(pictures),
    ...severalPagesNotices(pictures),
    ...(idle
      ? [
          ...idle.map(idleNotice),
          ...settings.targets.flatMap(target => idleRoute(target, pictures)),
          ...unsizedNotices(pictures, settings),
        ]
      : []),
  ];
}

/** A book within this one, whose own settings say nothing here. */
function mixedIn(folder: string, pictures: readonly BookPicture[]): string[] {
  const many = new Set(pictures.flatMap(({ path }) => (path.startsWith(`${folder}/`) ? path : []))).size;
  if (!many) return [];
  return [
    `"${folder}" has an evengrey.json of its own, and ${many === 1 ? 'its picture was' : `${many} pictures in it were`} judged by this book's. If it is another book, leave it out here: "ignore": ["${folder}/**"].`,
  ];
}

/** A route that this press may take, and that none of the pictures can. */
function idleRoute(target: Target, pictures: readonly BookPicture[]): string[] {
  const { name, route } = target;
  if (route === 'unknown' || doubtsOf(target).length) return [];
  const taken = new Set(
    pictures.flatMap(({ targets, forecasts }) =>
      forecasts.filter((_, at) => targets[at].name === name).map(forecast => forecast.condition.route),
    ),
  );
  if (!taken.size || taken.has(route)) return [];
  const others = [...taken].map(other => `"${other}"`).join(' or ');
  return [
    `The target "${name}": its route "${route}" can be taken by none of the pictures: they are forecast as ${others}.`,
  ];
}
