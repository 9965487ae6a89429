import { relinkAll } from '../../book/layouts/relink-all';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Settings } from '../../book/settings/settings';
import type { Relinked, RelinkedLine } from '../../shared/conversion';
import { followNames } from './follow';
import type { Named } from './names';

export interface Renaming {
  root: string;
  settings: Settings;
  /** Pictures of the book, relative to the root. */
  pictures: readonly string[];
  /** Texts as an editor has them open and not saved. */
  open: ReadonlyMap<string, string>;
  signal?: AbortSignal;
}

/** Another name of a file, or of a folder and all in it; relative to the root. */
export interface NewName {
  from: string;
  to: string;
}

/**
 * What layouts and settings have to be made to say once files and folders have other names, be it pictures, layouts or
 * both: found out before, while every path still leads to its picture. Nothing is written.
 * @returns `edits`: of files as they are called then; `left`: what stays as it is, and why
 */
export async function relinkToRenamed(
  { root, settings, pictures, open, signal }: Renaming,
  names: readonly NewName[],
): Promise<{ edits: RelinkedLine[]; left: Relinked['problems'] }> {
  const moving = (path: string) => newNameOf(path, names);
  const lines = await relinkAll(root, settings, new Map(), { dryRun: true, moving, open, signal });
  const follow = (always: Named, paths: readonly string[]) => {
    const renamed = paths.filter(path => moving(path) !== path);
    const replacements = new Map(renamed.map(path => [path, moving(path)]));
    const { places } = lines;
    return followNames({ root, replacements, places, always, dryRun: true, open: open.get(SETTINGS_FILE) });
  };
  const ofPictures = await follow('pictures', pictures);
  const ofLayouts = await follow('layouts', lines.layouts);
  const called = <Line extends { file: string }>(line: Line) => ({ ...line, file: moving(line.file) });
  return {
    edits: [...lines.changes, ...ofPictures.settings, ...ofLayouts.settings].map(called),
    left: [...lines.problems, ...ofPictures.problems, ...ofLayouts.problems].map(called),
  };
}

/** What a path is called then. */
function newNameOf(path: string, names: readonly NewName[]): string {
  const name = names.find(({ from }) => path === from || path.startsWith(`${from}/`));
  return name ? name.to + path.slice(name.from.length) : path;
}
