// no-unit-test: test/remedy/batch.test.ts and test/remedy/relinking/undo.test.ts relink by it
import fs from 'node:fs/promises';
import path from 'node:path';
import { relinkAll } from '../../book/layouts/relink-all';
import type { Settings } from '../../book/settings/settings';
import type { Conversion, Relinked } from '../../shared/conversion';
import { unplaceable } from '../plan/placing';
import type { Decision } from '../plan/types';
import { rememberRelinked } from './memory';
import { settingsThatName } from './settings';

export interface RelinkingTo {
  root: string;
  settings: Settings;
  dryRun: boolean;
  /** With it no layout is written (see `Converting`). */
  open?: ReadonlyMap<string, string>;
  /** The user's cache folder: what was relinked is remembered there, so that it can be undone. */
  memory: string;
  signal?: AbortSignal;
}

/**
 * Lines that place a picture place its result from now on, be it made now or before. What the settings say of the
 * picture by its name is not rewritten, since a list may be meant for more than this book's layouts: it is told.
 */
export async function relinkToResults(
  { root, settings, dryRun, open, memory, signal }: RelinkingTo,
  decisions: readonly Decision[],
  conversions: readonly Conversion[],
): Promise<Relinked> {
  const realRoot = await fs.realpath(root);
  const replacements = new Map<string, string>();
  const inks = new Set<string>();
  for (const [at, decision] of decisions.entries()) {
    if (decision.do !== 'convert' || conversions[at].output === null) continue;
    const { asked, order } = decision;
    const result = path.relative(realRoot, order.output).split(path.sep).join('/');
    const names = [asked.path, asked.link].filter(name => name !== null);
    for (const name of names) replacements.set(name, result);
    if (order.wish.to === 'black-only') inks.add(result);
    if (asked.pages[0].space === 'cmyk') for (const name of names) inks.add(name);
  }
  const placed = (file: string) => ({ path: file, inks: inks.has(file) });
  const writesNothing = dryRun || open !== undefined;
  const { changes, problems } = await relinkAll(root, settings, replacements, {
    dryRun: writesNothing,
    open,
    signal,
    refused: (kind, from, to) => unplaceable(kind, placed(from), placed(to)),
  });
  if (!writesNothing) await rememberRelinked(memory, realRoot, changes, replacements);
  return { changes, problems: [...problems, ...(await settingsThatName(root, replacements))] };
}
