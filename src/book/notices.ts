import type { BookPicture } from '../shared/finding';
import type { Target } from '../shared/target';
import type { Discovery } from './discovery/discover';
import { matcher } from './discovery/globs';
import { doubtNotices, doubtsOf } from './doubts';
import { replacedNotices } from './replaced';
import type { Settings } from './settings/settings';

/** What a search tells beside the files it found. */
export interface Searched extends Omit<Discovery, 'files'> {
  /** What the layouts have made of it, in sentences. */
  ofLayouts?: readonly string[];
}

/**
 * What was not looked at, and settings that concern nothing or cannot be: no verdicts, but a person would want to know.
 * @param pictures those that were looked at
 * @param whole they are all of the book
 */
export function noticesOf(
  { notEntered, ignored, idleIgnore, ofLayouts = [] }: Searched,
  settings: Settings,
  pictures: readonly BookPicture[],
  whole: boolean,
): string[] {
  return [
    ...notEntered.map(({ path, why }) => `"${path}" was not searched: ${why}.`),
    ...(ignored
      ? [
          `${ignored} ${ignored === 1 ? 'picture is' : 'pictures are'} left out by ignore files (.gitignore, .evengreyignore).`,
        ]
      : []),
    ...ofLayouts,
    ...settings.targets.flatMap(doubtNotices),
    ...replacedNotices(pictures),
    ...(whole
      ? [
          ...idleIgnore.map(pattern => `"ignore" has ${pattern}, and nothing that was searched matches it.`),
          ...idle(settings, pictures),
        ]
      : []),
  ];
}

/** Parts, intents, sizes, spreads and routes that are said of no picture: a slip of the pen, most often. */
function idle(
  { parts, intents, placements, spreads, targets }: Settings,
  pictures: readonly BookPicture[],
): string[] {
  const nothing = (globs: readonly string[]) => {
    const names = matcher(globs);
    return !pictures.some(picture => names(picture.path));
  };
  const matches = (globs: readonly string[]) => `nothing matches ${globs.join(', ')}.`;
  return [
    ...parts
      .filter(part => nothing(part.pictures))
      .map(part => `The part "${part.name}" holds no picture: ${matches(part.pictures)}`),
    ...intents
      .filter(group => nothing(group.pictures))
      .map(group => `The intent "${group.intent}" is of no picture: ${matches(group.pictures)}`),
    ...placements
      .filter(({ picture }) => nothing([picture]))
      .map(({ picture }) => `The placement of "${picture}" is of no picture: ${matches([picture])}`),
    ...[...new Set(spreads.flat())]
      .filter(picture => nothing([picture]))
      .map(picture => `A spread names "${picture}", and nothing matches it.`),
    ...targets.flatMap(target => idleRoute(target, pictures)),
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
