import { matcher } from '../../book/discovery/globs';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Relinked } from '../../shared/conversion';
import { inJson, listsIn, type Name, type Named, type Renamed, readNames, rename } from './names';

/** A picture whose result layouts place. */
interface Replaced {
  original: string;
  result: string;
  /** Lines that place the one, none any more where null, and the other. */
  stillAt: string | null;
  placedAt: string | null;
}

interface Following {
  root: string;
  /** Results by picture, relative to the root. */
  replacements: ReadonlyMap<string, string>;
  /** What layouts place, each with a line: see `Relinking`. */
  places: ReadonlyMap<string, string>;
  /** The pictures, or layouts, are called otherwise: the settings follow, be they placed or not. */
  always?: Named;
  dryRun: boolean;
  /** The settings as an editor has them open. */
  open?: string;
}

/**
 * Has the settings name the results that layouts place instead of pictures: else a spread would lose its page, and
 * whatever is said of a picture by its name would be said of nothing. Patterns are told and stay: they may be meant for
 * more. So is the name of a picture that other lines still place.
 */
export async function followNames(how: Following): Promise<Pick<Relinked, 'settings' | 'problems'>> {
  const settings = await readNames(how.root, how.open);
  const replaced = replacedIn(how);
  if (!settings || !replaced.length) return { settings: [], problems: [] };
  const renamed: Renamed[] = [];
  const told: Relinked['problems'] = [];
  for (const { key, names } of listsIn(settings.text, how.always)) {
    const words = names.map(({ word }) => goneWith(word, replaced)?.result ?? word);
    // each result once, though a picture and a link to it may both be named
    const free = new Set(words.filter(result => !names.some(({ word }) => sameName(word, result))));
    if (key === 'ignore') told.push(...leftOut(names, words, replaced));
    for (const name of names) {
      const named = goneWith(name.word, replaced);
      if (named === null) {
        const why = outdated(name.word, replaced, words);
        if (why) told.push({ file: SETTINGS_FILE, line: name.line, why });
      } else if (free.delete(named.result))
        renamed.push({ name, to: inJson(named.result), picture: named.picture });
    }
  }
  const written = await rename(how.root, settings, renamed, how.dryRun);
  return { settings: written.settings, problems: [...written.problems, ...told] };
}

/** Pictures that the book has no more: their results are placed, they are not, and no pattern of `pictures` names them. */
export function retired(
  how: Pick<Following, 'replacements' | 'places'>,
  pictures: readonly string[] | null,
): string[] {
  const replaced = replacedIn(how);
  const now = pictures && matcher(pictures.map(word => goneWith(word, replaced)?.result ?? word));
  return replaced.flatMap(({ original, stillAt }) => (stillAt || now?.(original) ? [] : original));
}

const replacedIn = ({
  replacements,
  places,
  always,
}: Pick<Following, 'replacements' | 'places' | 'always'>): Replaced[] =>
  [...replacements].flatMap(([original, result]) => {
    const placedAt = places.get(result) ?? null;
    const stillAt = always ? null : (places.get(original) ?? null);
    return placedAt || always ? { original, result, placedAt, stillAt } : [];
  });

/** What a word is to become that is the name of a picture which layouts place no more; null for any other. */
function goneWith(word: string, replaced: readonly Replaced[]): { result: string; picture: string } | null {
  const [, before, name] = /^(!?(?:\.\/)*)(.*)$/s.exec(word)!;
  const one = replaced.find(({ original }) => sameName(original, name));
  return one && !one.stillAt ? { result: before + one.result, picture: one.result } : null;
}

const isTaking = (word: string) => word.startsWith('!');
const bare = (word: string) => word.replace(/^!/, '');

const sameName = (one: string, other: string) => one.normalize('NFC') === other.normalize('NFC');

/** Results that `ignore` leaves out of the book, though it did not leave out the pictures. */
function leftOut(
  names: readonly Name[],
  words: readonly string[],
  replaced: readonly Replaced[],
): Relinked['problems'] {
  const [before, after] = [matcher(names.map(({ word }) => word)), matcher(words)];
  return replaced
    .filter(({ original, result, placedAt }) => placedAt && after(result) && !before(original))
    .map(({ result, placedAt }) => {
      const { line, word } = names.find(({ word }) => !isTaking(word) && matcher([word])(result))!;
      const why = `"${word}" leaves ${result} out of the book, which ${placedAt} places: it would be printed, and never checked. Add "!${result}".`;
      return { file: SETTINGS_FILE, line, why };
    });
}

/** Why a word that stays does not say any more what it said; null where it does. @param words its list, as it will be */
function outdated(word: string, replaced: readonly Replaced[], words: readonly string[]): string | null {
  const names = matcher([bare(word)]);
  const together = matcher(words.filter(other => isTaking(other) === isTaking(word)).map(bare));
  const missed = replaced.filter(({ original, result }) => names(original) && !together(result));
  if (!missed.length) return null;
  const [{ original, result, stillAt, placedAt }] = missed;
  const more = missed.length > 1 ? `, and ${missed.length - 1} more so` : '';
  return sameName(bare(word).replace(/^(?:\.\/)+/, ''), original)
    ? `"${word}" names the picture, which ${stillAt} still places, and not its result, which ${placedAt} places: what is said here does not hold for that. Add "${result}".`
    : `"${word}" names ${original} and not ${result}${more}: what is said here does not hold for that. Add "${result}".`;
}
