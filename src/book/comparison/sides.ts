// no-unit-test: test/book/comparison/compare.test.ts compares books whose settings before are broken
import type { Blobs } from '../git/blobs';
import { RevisionSettingsError, type Side, sideOf, withSettings } from '../revisions/side';
import type { Settings } from '../settings/settings';
import type { Ends } from './ends';

export interface Sides {
  base: Side;
  head: Side;
}

/**
 * The book at either end, each by the settings that it had then; `adjust` makes of them what was asked for on the spot. A
 * base whose settings are broken was judged by nobody: today's are the nearest that there is, and `borrowed` says so.
 * @throws RevisionSettingsError, NotInCloneError
 */
export async function sidesOf(
  root: string,
  { before, after }: Pick<Ends, 'before' | 'after'>,
  blobs: Blobs,
  adjust: (settings: Settings) => Settings,
): Promise<Sides & { borrowed: string[] }> {
  const head = await sideOf(root, after, blobs, adjust, 'after');
  try {
    return { head, base: await sideOf(root, before, blobs, adjust, 'before'), borrowed: [] };
  } catch (error) {
    if (!(error instanceof RevisionSettingsError)) throw error;
    const base = await withSettings(root, head.settings, before, blobs, 'before');
    return { head, base, borrowed: [borrowedNotice(error)] };
  }
}

function borrowedNotice({ problems }: RevisionSettingsError): string {
  const have = problems.length === 1 ? 'a problem' : `${problems.length} problems`;
  const told = problems.map(({ file, line, message }) => `${file}:${line}: ${message}`).join(' ');
  return `The settings before have ${have}, so the pictures before are judged by the settings after. ${told}`;
}
