import type { BookPicture, Slip } from '../shared/finding';
import { matcher } from './discovery/globs';
import type { Searched } from './notices';
import type { Settings } from './settings/settings';
import { suggest } from './settings/suggest';
import { type WrittenAt, writtenAt } from './settings/written-at';

/** Something that settings say in vain: where it stands is null for settings that nobody wrote. */
export interface Idle {
  message: string;
  at: WrittenAt | null;
}

/** A pattern is meant to match what comes, and no other is meant by it. */
const GLOB = /[*?[\]{}()!]/;

/**
 * Names in the settings that name nothing, or name a picture where it can stand but once: a slip of the pen, most often.
 * @param pictures all of the book
 */
export function idleSettings(
  { idleIgnore, idleLayouts = [], notInBook = [] }: Searched,
  settings: Settings,
  pictures: readonly Pick<BookPicture, 'path'>[],
): Idle[] {
  const { written, parts, intents, placements, spreads } = settings;
  const at = (under: string, word: string, nth = 0) =>
    (written && writtenAt(written, under, word)[nth]) ?? null;
  const inBook = (name: string) => {
    const names = matcher([name]);
    return pictures.some(({ path }) => names(path));
  };
  const nothing = (globs: readonly string[]) => {
    const names = matcher(globs);
    return !pictures.some(({ path }) => names(path));
  };
  const matches = (globs: readonly string[], called?: 'it') => why(globs, pictures, notInBook, called);
  return [
    ...idleIgnore.map(pattern => ({
      message: `"ignore" has ${pattern}, and nothing that was searched matches it.`,
      at: at('ignore', pattern),
    })),
    ...idleLayouts.map(pattern => ({
      message: `"layouts" has ${pattern}, and no layout that was searched matches it.`,
      at: at('layouts', pattern),
    })),
    ...parts
      .filter(part => nothing(part.pictures))
      .map(part => ({
        message: `The part "${part.name}" holds no picture: ${matches(part.pictures)}`,
        at: at('parts', part.pictures[0]),
      })),
    ...intents
      .filter(group => nothing(group.pictures))
      .map(group => ({
        message: `The intent "${group.intent}" is of no picture: ${matches(group.pictures)}`,
        at: at('intent', group.pictures[0]),
      })),
    ...placements
      .filter(({ picture }) => !inBook(picture))
      .map(({ picture }) => ({
        message: `The placement of "${picture}" is of no picture: ${matches([picture])}`,
        at: at('placements', picture),
      })),
    ...[...new Set(spreads.flat())]
      .filter(picture => !inBook(picture))
      .map(picture => ({
        message: `A spread names "${picture}", and ${matches([picture], 'it')}`,
        at: at('spreads', picture),
      })),
    ...again(spreads)
      .filter(({ name }) => inBook(name))
      .map(({ name, nth, same }) => ({
        message: same
          ? `A spread names "${name}" twice, and it is shown once.`
          : `A spread names "${name}", which stands in an earlier one: it is shown there, and here it is only compared with the others.`,
        at: at('spreads', name, nth),
      })),
  ];
}

/** Why patterns match nothing in the book, and what may have been meant. */
function why(
  globs: readonly string[],
  pictures: readonly Pick<BookPicture, 'path'>[],
  notInBook: readonly string[],
  called?: 'it',
): string {
  const beside = notInBook.filter(matcher(globs));
  if (beside.length)
    return `${called ?? beside[0]} is in the folder, but no layout places it, so it is not in the book.`;
  const [name] = globs;
  const meant =
    globs.length === 1 && !GLOB.test(name)
      ? suggest(
          name,
          pictures.map(({ path }) => path),
        )
      : null;
  return `nothing matches ${called ?? globs.join(', ')}.${meant ? ` Did you mean "${meant}"?` : ''}`;
}

/** Names that stand in the spreads before: each with how often; `same`: in the same spread. */
function again(spreads: Settings['spreads']): { name: string; nth: number; same: boolean }[] {
  const times = new Map<string, { nth: number; spread: readonly string[] }>();
  return spreads.flatMap(spread =>
    spread.flatMap(name => {
      const before = times.get(name);
      const nth = before ? before.nth + 1 : 0;
      times.set(name, { nth, spread });
      return before ? { name, nth, same: before.spread === spread } : [];
    }),
  );
}

/** The sentence, behind where it stands as compilers say it. */
export const idleNotice = ({ message, at }: Idle): string =>
  at ? `${at.file}:${at.line}:${at.column}: ${message}` : message;

/** Those that stand somewhere, to be shown there. */
export const slipsOf = (idle: readonly Idle[]): Slip[] =>
  idle.flatMap(({ message, at }) => (at ? { ...at, message } : []));
