import type { BookPicture, Slip } from '../shared/finding';
import { isPattern, matcher } from './discovery/globs';
import { nearPicture } from './near-picture';
import type { Searched } from './notices';
import type { Settings } from './settings/settings';
import { placesIn, type WrittenAt } from './settings/written-at';

/** Something that settings say in vain: where it stands is null for settings that nobody wrote. */
export interface Idle {
  message: string;
  at: WrittenAt | null;
  /** The name that was probably meant there, where there is one. */
  suggestion?: string;
}

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
  const places = written && placesIn(written);
  const at = (under: string, word: string, nth = 0) => places?.(under, word)[nth] ?? null;
  const inBook = (name: string) => {
    const names = matcher([name]);
    return pictures.some(({ path }) => names(path));
  };
  const nothing = (globs: readonly string[]) => {
    const names = matcher(globs);
    return !pictures.some(({ path }) => names(path));
  };
  const inSpreads = new Set(spreads.flat());
  /** `before`: how the sentence begins, `called`: how it goes on of the one name in it, `taken`: names that were not meant. */
  const idle = (
    before: string,
    under: string,
    globs: readonly string[],
    { called, taken }: { called?: 'it'; taken?: ReadonlySet<string> } = {},
  ): Idle => {
    const { because, suggestion } = why(globs, { pictures, notInBook, taken }, called);
    return { message: before + because, at: at(under, globs[0]), ...(suggestion && { suggestion }) };
  };
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
      .map(part => idle(`The part "${part.name}" holds no picture: `, 'parts', part.pictures)),
    ...intents
      .filter(group => nothing(group.pictures))
      .map(group => idle(`The intent "${group.intent}" is of no picture: `, 'intent', group.pictures)),
    ...placements
      .filter(({ picture }) => !inBook(picture))
      .map(({ picture }) =>
        idle(`The placement of "${picture}" is of no picture: `, 'placements', [picture]),
      ),
    ...[...inSpreads]
      .filter(picture => !inBook(picture))
      .map(picture =>
        idle(`A spread names "${picture}", and `, 'spreads', [picture], { called: 'it', taken: inSpreads }),
      ),
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

interface Sought {
  pictures: readonly Pick<BookPicture, 'path'>[];
  notInBook: readonly string[];
  /** A picture that stands elsewhere already is not the one that was meant, however near its name is. */
  taken?: ReadonlySet<string>;
}

/** Why patterns match nothing in the book, as a sentence ends, and what may have been meant. */
function why(
  globs: readonly string[],
  { pictures, notInBook, taken }: Sought,
  called?: 'it',
): { because: string; suggestion: string | null } {
  const [beside] = notInBook.filter(matcher(globs));
  if (beside !== undefined) {
    const because = `${called ?? beside} is in the folder, but no layout places it, so it is not in the book.`;
    return { because, suggestion: null };
  }
  const [name] = globs;
  const paths = pictures.map(({ path }) => path);
  const nearest = globs.length === 1 && !isPattern(name) ? nearPicture(name, paths) : null;
  const suggestion = nearest !== null && taken?.has(nearest) ? null : nearest;
  const meant = suggestion ? ` Did you mean "${suggestion}"?` : '';
  return { because: `nothing matches ${called ?? globs.join(', ')}.${meant}`, suggestion };
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
export const idleNotice = ({ message, at }: Pick<Idle, 'message' | 'at'>): string =>
  at ? `${at.file}:${at.line}:${at.column}: ${message}` : message;

/** Those that stand somewhere, to be shown there. */
export const slipsOf = (idle: readonly Idle[]): Slip[] =>
  idle.flatMap(({ at, ...told }) => (at ? { ...at, ...told } : []));
