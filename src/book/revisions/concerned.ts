import type { Blobs } from '../git/blobs';
import type { Change } from '../git/changes';
import type { Snapshot } from '../git/snapshot';
import { loadSettings } from '../settings/load';
import type { Settings } from '../settings/settings';
import { calledNow } from './rearranged';
import { isResized, judgingChanges, missingWaivers } from './settings-changes';
import { RevisionSettingsError, type Side, withSettings } from './side';
import { filesOf } from './source';

/** What a picture is judged by beside its own content. */
export type Ground = Pick<Side, 'settings' | 'waivers' | 'placements' | 'missing'> & {
  pages: Pick<Side['pages'], 'has' | 'keys'>;
};

/**
 * Why a picture is judged anew though its content is what it was:
 * - `settings`: it is judged by others, as every picture is
 * - `book`: what is said of the book is not waived any more, and nobody knows of which pictures that was
 * - `placing`: settings, layouts or ignore files have let it in, or layouts place it at another size
 * - `waiver`: what is said of it is not waived any more
 * - `others`: something is said of it since those that it is compared with are others
 */
export type Reason = 'settings' | 'book' | 'placing' | 'waiver' | 'others';

/** Whom a change of what pictures are judged by concerns. */
export interface Concerned {
  /** The same for every picture; null: it concerns some, or none. */
  all: Reason | null;
  /** Null: its content alone says whether it is judged. */
  why(path: string): Reason | null;
}

/**
 * Compared by what it comes to, so that a comment in the settings or a line that only moves in a layout concerns nobody.
 * `before` null: the settings were none that can be used. `renamed`: pictures that are called otherwise now, whose names in the
 * settings may follow them.
 */
export function concernedBy(
  before: Ground | null,
  now: Ground,
  renamed: readonly Pick<Change, 'path' | 'from'>[] = [],
): Concerned {
  const everybody = (all: Reason): Concerned => ({ all, why: () => all });
  if (!before || judgingChanges(before.settings, now.settings, calledNow(renamed)).length)
    return everybody('settings');
  const waiversGone = missingWaivers(before.waivers, now.waivers);
  if (waiversGone.some(({ picture }) => picture == null)) return everybody('book');
  const unwaived = new Set(waiversGone.flatMap(({ picture, other }) => [picture, other]));
  const lost = new Set(before.missing.map(({ path }) => path));
  return {
    all: null,
    why: path => {
      if (!(before.pages.has(path) || lost.has(path)) || isResized(path, before, now)) return 'placing';
      return unwaived.has(path) ? 'waiver' : null;
    },
  };
}

/** By path; where a reason concerns all, that of each. */
export const concernedOf = (paths: readonly string[], { why }: Concerned): Map<string, Reason> =>
  new Map(
    paths.flatMap(path => {
      const reason = why(path);
      return reason ? [[path, reason] as const] : [];
    }),
  );

/** Pictures that were in the book and are not any more. `renamed`: their names before. */
export function goneFrom(before: Ground | null, now: Ground, renamed: ReadonlySet<string>): string[] {
  const blank = new Set(now.missing.map(({ path }) => path));
  return [...(before?.pages.keys() ?? [])].filter(
    path => !now.pages.has(path) && !blank.has(path) && !renamed.has(path),
  );
}

/**
 * The book as a snapshot holds it, to be compared with what it is now. `named`: settings that somebody named, which are
 * the same for both. Null where its settings or waivers cannot be used. @throws NotInCloneError
 */
export async function groundOf(
  root: string,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small' | 'head'>,
  { named, adjust }: { named: Settings | null; adjust: (settings: Settings) => Settings },
): Promise<Side | null> {
  const source = filesOf(root, snapshot, blobs);
  const settings = named ?? (await adjusted(await loadSettings(root, { source }), adjust));
  source.complete();
  if (!settings) return null;
  return withSettings(root, settings, snapshot, blobs, 'before').catch(error => {
    if (error instanceof RevisionSettingsError) return null;
    throw error;
  });
}

/** What is asked for on the spot may not go with the settings of before: then they were others, whatever they said. */
function adjusted(
  { settings }: { settings: Settings | null },
  adjust: (settings: Settings) => Settings,
): Settings | null {
  try {
    return settings && adjust(settings);
  } catch {
    return null;
  }
}
