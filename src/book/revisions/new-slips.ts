import { isLink } from '../git/snapshot';
import { type Idle, idleSettings } from '../idle-settings';
import type { Settings } from '../settings/settings';
import type { Side } from './side';

/** Settings, and what their names can be of. */
export interface Naming {
  settings: Settings;
  /** Paths of all pictures of the book, those that are placed and missing among them. */
  pictures: Iterable<string>;
  notInBook: readonly string[];
}

/** What the names in the settings of a revision can be of; a link may lead to a picture. */
export const namingOf = ({ settings, pages, missing, notInBook, snapshot }: Side): Naming => ({
  settings,
  pictures: [
    ...pages.keys(),
    ...missing.map(({ path }) => path),
    ...[...snapshot].flatMap(([path, entry]) => (isLink(entry) ? path : [])),
  ],
  notInBook,
});

/**
 * What settings say in vain now and did not before, by its words: a line that moves is not new. Patterns of `ignore` and
 * `layouts` are left out, which are tried on more than pictures. `before` null: there were no settings that can be used.
 */
export function newSlips(before: Naming | null, now: Naming): Idle[] {
  const known = new Set(before && idleOf(before).map(({ message }) => message));
  return idleOf(now).filter(({ message }) => !known.has(message));
}

const idleOf = ({ settings, pictures, notInBook }: Naming): Idle[] =>
  idleSettings(
    { notEntered: [], ignored: 0, idleIgnore: [], notInBook },
    settings,
    [...pictures].map(path => ({ path })),
  );
