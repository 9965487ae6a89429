import { relinkAll } from '../../book/layouts/relink-all';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Settings } from '../../book/settings/settings';
import type { RelinkedLine } from '../../shared/conversion';
import { followNames } from './follow';

export interface Renaming {
  root: string;
  settings: Settings;
  /** Texts as an editor has them open and not saved. */
  open: ReadonlyMap<string, string>;
  signal?: AbortSignal;
}

/**
 * What layouts and settings have to be made to say once pictures have other names: found out before, while every path
 * still leads to its picture. Nothing is written.
 * @param names new names by the old, relative to the root
 */
export async function relinkToRenamed(
  { root, settings, open, signal }: Renaming,
  names: ReadonlyMap<string, string>,
): Promise<RelinkedLine[]> {
  if (!names.size) return [];
  const { changes, places } = await relinkAll(root, settings, names, { dryRun: true, open, signal });
  // the settings name it, be it placed or not
  const everywhere = new Map([...names.values()].map(name => [name, SETTINGS_FILE]));
  for (const [picture, line] of places) everywhere.set(picture, line);
  const followed = await followNames({
    ...{ root, replacements: names, places: everywhere, dryRun: true },
    open: open.get(SETTINGS_FILE),
  });
  return [...changes, ...followed.settings];
}
