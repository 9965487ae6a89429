import fs from 'node:fs/promises';
import path from 'node:path';
import { type Exactly, type Relinking, relinkAll } from '../../book/layouts/relink-all';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Settings } from '../../book/settings/settings';
import { isWithin } from '../../book/settings/within';
import type { Relinked } from '../../shared/conversion';
import { type Relink, relinkedIn } from './memory';
import { listsIn, type Renamed, readNames, rename } from './names';
import { placedBefore } from './placed-before';

export interface RelinkUndoing {
  root: string;
  /** Absolute: pictures, results or layouts, or folders with them. */
  paths: readonly string[];
  settings: Settings;
  dryRun: boolean;
  /** With it no layout is written (see `Selecting`). */
  open?: ReadonlyMap<string, string>;
}

/**
 * Has layouts place the originals again, where a line still says what relinking wrote there: to the byte what it said
 * before. What else names a result was written by somebody else and stays; so does a line whose original is gone.
 * @returns null where nothing was ever relinked that is meant
 */
export async function undoRelinking(how: RelinkUndoing): Promise<Relinked | null> {
  const { root, settings, open } = how;
  const dryRun = how.dryRun || open !== undefined;
  const realRoot = await fs.realpath(root);
  const all = await relinkedIn(realRoot);
  const relinks = (await meant(all, realRoot, how.paths)).filter(({ file }) => file !== SETTINGS_FILE);
  if (!relinks.length) return null;
  const replacements = new Map(relinks.map(({ result, original }) => [result, original]));
  // the last that was written at a place is what it said
  const written = new Map(relinks.map(relink => [`${relink.file}\0${relink.to}`, relink]));
  const ours: Exactly = ({ file, from }) => written.get(`${file}\0${from}`)?.from ?? null;
  const seen = await relinkAll(root, settings, replacements, { dryRun: true, exactly: ours, open });
  const problems: Relinked['problems'] = [...seen.problems];
  const chosen = new Set<string>();
  for (const change of seen.changes) {
    const why = await leftBecause(change, seen.changes, relinks, realRoot);
    if (why) problems.push({ file: change.file, line: change.line, why });
    else chosen.add(`${change.file}\0${change.line}\0${change.column}`);
  }
  const exactly: Exactly = place =>
    chosen.has(`${place.file}\0${place.line}\0${place.column}`) ? ours(place) : null;
  const done = await relinkAll(root, settings, replacements, { dryRun, exactly, open });
  const results = new Set(relinks.map(({ result }) => result));
  const renamed = all.filter(({ file, result }) => file === SETTINGS_FILE && results.has(result));
  const text = open?.get(SETTINGS_FILE);
  const names = await undoNames({ root, realRoot, dryRun, open: text }, renamed, done.places);
  return {
    ...{
      changes: done.changes,
      settings: names.settings,
      problems: [...problems, ...done.problems, ...names.problems],
    },
    placedBefore: placedBefore(replacements.values(), done.places, done.changes),
  };
}

/** Has the settings name the originals again, as they did to the byte, where layouts place no result any more. */
async function undoNames(
  { root, realRoot, dryRun, open }: { root: string; realRoot: string; dryRun: boolean; open?: string },
  relinks: readonly Relink[],
  places: Relinking['places'],
): Promise<Pick<Relinked, 'settings' | 'problems'>> {
  const settings = await readNames(root, open);
  if (!settings) return { settings: [], problems: [] };
  const written = new Map(relinks.map(relink => [relink.to, relink]));
  const found = listsIn(settings.text)
    .flatMap(({ names }) => names)
    .flatMap((name): (Renamed & { relink: Relink })[] => {
      const relink = written.get(name.written);
      return relink ? [{ name, to: relink.from, picture: relink.original, relink }] : [];
    });
  const seen = found.map(({ name, to, picture }) => ({
    ...{ file: SETTINGS_FILE, line: name.line, column: name.column },
    ...{ from: name.written, to, picture },
  }));
  const problems: Relinked['problems'] = [];
  const renamed: Renamed[] = [];
  for (const [at, one] of found.entries()) {
    const placedAt = places.get(one.relink.result);
    const why = placedAt
      ? `${placedAt} still places "${one.relink.result}", so it stays named here.`
      : await leftBecause(seen[at], seen, relinks, realRoot);
    if (why) problems.push({ file: SETTINGS_FILE, line: one.name.line, why });
    else renamed.push(one);
  }
  const done = await rename(root, settings, renamed, dryRun);
  return { settings: done.settings, problems: [...problems, ...done.problems] };
}

type Change = Relinked['changes'][number];

/** Why a line that says what relinking wrote is left all the same; null: it is put back. */
async function leftBecause(
  { file, line, from, picture }: Change,
  all: readonly Change[],
  relinks: readonly Relink[],
  root: string,
): Promise<string | null> {
  const lines = new Set(
    relinks.filter(each => each.file === file && each.to === from).map(each => each.line),
  );
  const alike = all.filter(each => each.file === file && each.from === from);
  if (new Set(alike.map(each => each.line)).size > lines.size && !lines.has(line))
    return `It names the result "${from}" too, though relinking did not write that here: it was left as it is.`;
  const stat = await fs.stat(path.join(root, picture)).catch(() => null);
  return stat?.isFile() ? null : `"${picture}" is not there any more, so the result stays in its place.`;
}

/** Those of named pictures, results and layouts. */
async function meant(
  relinks: readonly Relink[],
  realRoot: string,
  paths: readonly string[],
): Promise<Relink[]> {
  const named = await Promise.all(paths.map(file => fs.realpath(file).catch(() => path.resolve(file))));
  return relinks.filter(({ file, original, result }) =>
    [file, original, result].some(at => named.some(outer => isWithin(outer, path.join(realRoot, at)))),
  );
}
