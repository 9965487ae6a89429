// no-unit-test: test/remedy/batch.test.ts and the tests of test/remedy/relinking relink by it
import fs from 'node:fs/promises';
import path from 'node:path';
import { relinkAll } from '../../book/layouts/relink-all';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { Settings } from '../../book/settings/settings';
import type { Conversion, Relinked } from '../../shared/conversion';
import type { RemedyWish } from '../../shared/remedy';
import { unplaceable } from '../plan/placing';
import { isRight } from '../plan/skips';
import type { Decision } from '../plan/types';
import type { Results } from '../results';
import type { Selected } from '../select';
import { staysPlaced } from './earlier';
import { followNames, retired } from './follow';
import { rememberRelinked } from './memory';
import { placedBefore } from './placed-before';

export interface RelinkingTo {
  root: string;
  settings: Settings;
  wish: RemedyWish;
  dryRun: boolean;
  /** With it no layout is written (see `Selecting`). */
  open?: ReadonlyMap<string, string>;
  results: Results;
  earlierOf: Selected['earlierOf'];
}

/**
 * Lines that place a picture or an earlier result of it place its result from now on, be it made now or before, and the
 * settings name it so. A picture that is right itself is placed instead of its earlier results. What was relinked is
 * remembered, so that it can be undone.
 * `gone`: SHA-256 of the pictures that are in the book no more.
 */
export async function relinkToResults(
  { root, settings, wish, dryRun, open, results, earlierOf }: RelinkingTo,
  decisions: readonly Decision[],
  conversions: readonly Conversion[],
): Promise<{ relinking: Relinked; gone: string[] }> {
  const realRoot = await fs.realpath(root);
  const replacements = new Map<string, string>();
  const inks = new Set<string>();
  const contents = new Map<string, string>();
  const originals = new Map<string, string>();
  const staying = new Map<string, string>();
  for (const [at, decision] of decisions.entries()) {
    const result = resultOf(decision, conversions[at], realRoot, wish);
    if (result === null) continue;
    const { asked } = decision;
    const { sha256, space } = asked.pages[0];
    originals.set(result, asked.link ?? asked.path);
    for (const name of [asked.path, asked.link])
      if (name !== null && name !== result) {
        replacements.set(name, result);
        contents.set(name, sha256);
        if (space === 'cmyk') inks.add(name);
      }
    for (const earlier of earlierOf(asked).filter(name => name !== result)) {
      replacements.set(earlier, result);
      const why = await staysPlaced(earlier, realRoot, asked, results);
      if (why) staying.set(earlier, why);
    }
    if (decision.do === 'convert' ? decision.order.wish.to === 'black-only' : space === 'cmyk')
      inks.add(result);
  }
  const placed = (file: string) => ({ path: file, inks: inks.has(file) });
  const writesNothing = dryRun || open !== undefined;
  const { changes, problems, places } = await relinkAll(root, settings, replacements, {
    dryRun: writesNothing,
    open,
    // before it is written, so that a kill leaves no line that nobody can take back
    before: lines => rememberRelinked(realRoot, lines, originals),
    refused: (kind, from, to) => staying.get(from) ?? unplaceable(kind, placed(from), placed(to)),
  });
  const following = { root, replacements, places, dryRun: writesNothing, open: open?.get(SETTINGS_FILE) };
  const names = await followNames(following);
  const why = writesNothing ? null : await rememberRelinked(realRoot, names.settings, originals);
  if (why) names.problems.push({ file: SETTINGS_FILE, line: null, why });
  return {
    relinking: {
      ...{ changes, settings: names.settings, problems: [...problems, ...names.problems] },
      placedBefore: placedBefore(replacements.values(), places, changes),
    },
    gone: retired(following, settings.pictures).flatMap(picture => contents.get(picture) ?? []),
  };
}

/** What is to be placed for a picture, relative to the root; null: whatever is. */
function resultOf(
  decision: Decision,
  { output }: Conversion,
  realRoot: string,
  wish: RemedyWish,
): string | null {
  const { asked } = decision;
  if (decision.do === 'skip') return isRight(asked.pages[0], wish) ? asked.path : null;
  if (decision.do === 'refuse' || output === null) return null;
  return path.relative(realRoot, decision.order.output).split(path.sep).join('/');
}
