// no-unit-test: test/book/comparison/compare-settings.test.ts compares books whose settings changed
import type { Comparison } from '../../shared/comparison';
import type { PageOf } from '../revisions/page-changes';
import { calledNow } from '../revisions/rearranged';
import { rulesOff, rulesStricter, rulesWeaker, settingsChanges } from '../revisions/settings-changes';
import type { Sides } from './sides';

/**
 * What pictures are judged by, where it is not what it was; nothing of a book that is new or gone.
 * @param paths pictures that are the same on both sides
 */
export function settingsBetween(
  { base, head }: Sides,
  pages: readonly PageOf[],
  paths: readonly string[],
): Omit<Comparison['settings'], 'forecasts'> {
  if (!head.snapshot.size || !base.snapshot.size) return { changes: [] };
  const off = rulesOff(base.settings, head.settings);
  const weaker = rulesWeaker(base.settings.rules, head.settings.rules);
  const stricter = rulesStricter(base.settings.rules, head.settings.rules);
  return {
    changes: settingsChanges(base, head, paths, calledNow(pages)),
    ...(off.length && { off }),
    ...(weaker.length && { weaker }),
    ...(stricter.length && { stricter }),
  };
}
