// no-unit-test: test/remedy/batch.test.ts and test/remedy/relinking/undo.test.ts relink by it
import fs from 'node:fs/promises';
import path from 'node:path';
import { relinkAll } from '../../book/layouts/relink-all';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Settings } from '../../book/settings/settings';
import type { Conversion, Relinked } from '../../shared/conversion';
import { unplaceable } from '../plan/placing';
import type { Decision } from '../plan/types';
import { followNames, retired } from './follow';
import { rememberRelinked } from './memory';
import { placedBefore } from './placed-before';

export interface RelinkingTo {
  root: string;
  settings: Settings;
  dryRun: boolean;
  /** With it no layout is written (see `Selecting`). */
  open?: ReadonlyMap<string, string>;
  /** The user's cache folder: what was relinked is remembered there, so that it can be undone. */
  memory: string;
}

/**
 * Lines that place a picture place its result from now on, be it made now or before, and the settings name it so.
 * `gone`: SHA-256 of the pictures that are in the book no more.
 */
export async function relinkToResults(
  { root, settings, dryRun, open, memory }: RelinkingTo,
  decisions: readonly Decision[],
  conversions: readonly Conversion[],
): Promise<{ relinking: Relinked; gone: string[] }> {
  const realRoot = await fs.realpath(root);
  const replacements = new Map<string, string>();
  const inks = new Set<string>();
  const contents = new Map<string, string>();
  for (const [at, decision] of decisions.entries()) {
    if (decision.do !== 'convert' || conversions[at].output === null) continue;
    const { asked, order } = decision;
    const result = path.relative(realRoot, order.output).split(path.sep).join('/');
    const names = [asked.path, asked.link].filter(name => name !== null);
    for (const name of names) {
      replacements.set(name, result);
      contents.set(name, asked.pages[0].sha256);
    }
    if (order.wish.to === 'black-only') inks.add(result);
    if (asked.pages[0].space === 'cmyk') for (const name of names) inks.add(name);
  }
  const placed = (file: string) => ({ path: file, inks: inks.has(file) });
  const writesNothing = dryRun || open !== undefined;
  const { changes, problems, places } = await relinkAll(root, settings, replacements, {
    dryRun: writesNothing,
    open,
    // before it is written, so that a kill leaves no line that nobody can take back
    before: lines => rememberRelinked(memory, realRoot, lines, replacements),
    refused: (kind, from, to) => unplaceable(kind, placed(from), placed(to)),
  });
  const following = { root, replacements, places, dryRun: writesNothing, open: open?.get(SETTINGS_FILE) };
  const names = await followNames(following);
  if (!writesNothing) await rememberRelinked(memory, realRoot, names.settings, replacements);
  return {
    relinking: {
      ...{ changes, settings: names.settings, problems: [...problems, ...names.problems] },
      placedBefore: placedBefore(replacements.values(), places, changes),
    },
    gone: retired(following, settings.pictures).map(picture => contents.get(picture)!),
  };
}
