// no-unit-test: test/cli/actions/since.test.ts runs the built program where settings and layouts change
import { loadSettings } from '../settings/load';
import type { Settings } from '../settings/settings';
import type { Blobs } from './blobs';
import { RevisionSettingsError, type Side, withSettings } from './side';
import type { Snapshot } from './snapshot';
import { filesOf } from './source';

/** What a picture is judged by beside its own content. */
export type Ground = Pick<Side, 'settings' | 'placements' | 'missing'> & {
  pages: Pick<Side['pages'], 'has' | 'keys'>;
};

/** Pictures that are judged otherwise than before though their content is what it was. */
export interface Concerned {
  /** The settings are others: every picture. */
  all: boolean;
  /** Else: those that settings, layouts or ignore files have let in, and those that layouts place otherwise. */
  has(path: string): boolean;
}

/**
 * Whom a change of what pictures are judged by concerns. Compared by what it comes to, so that a comment in the settings
 * or a line that only moves in a layout concerns nobody. `before` null: the settings were none that can be used.
 */
export function concernedBy(before: Ground | null, now: Ground): Concerned {
  if (!before || !alike(before.settings, now.settings)) return { all: true, has: () => true };
  const lost = new Set(before.missing.map(({ path }) => path));
  const sizes = ({ placements }: Ground, path: string) => placements.get(path)?.map(({ size }) => size) ?? [];
  return {
    all: false,
    has: path => !(before.pages.has(path) || lost.has(path)) || !alike(sizes(before, path), sizes(now, path)),
  };
}

/** By what they say: a profile stands in a text for its content. */
const alike = (x: unknown, y: unknown): boolean => JSON.stringify(x) === JSON.stringify(y);

/** Pictures that were in the book and are not any more. `renamed`: their names before. */
export function goneFrom(before: Ground | null, now: Ground, renamed: ReadonlySet<string>): string[] {
  const blank = new Set(now.missing.map(({ path }) => path));
  return [...(before?.pages.keys() ?? [])].filter(
    path => !now.pages.has(path) && !blank.has(path) && !renamed.has(path),
  );
}

/**
 * The book as a snapshot holds it, to be compared with what it is now. `named`: settings that somebody named, which are
 * the same for both. Null where its settings or waivers cannot be used.
 */
export async function groundOf(
  root: string,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  { named, adjust }: { named: Settings | null; adjust: (settings: Settings) => Settings },
): Promise<Ground | null> {
  const source = filesOf(root, snapshot, blobs);
  const settings = named ?? (await adjusted(await loadSettings(root, { source }), adjust));
  if (!settings) return null;
  return withSettings(root, settings, snapshot, blobs).catch(error => {
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
