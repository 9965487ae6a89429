// no-unit-test: test/book/comparison/compare-settings.test.ts compares books whose settings changed
import { isToBeGrey } from '../../rules/likely-tint/prints';
import type { SetForecast } from '../../shared/comparison';
import type { PictureReport } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import { pairedTargets } from '../revisions/settings-changes';
import type { Side } from '../revisions/side';

/**
 * How often a tint is seen in pictures that are the same on both sides, by the settings of either, a target each: so that
 * nothing but the settings makes the difference. Of colour, and of what cannot be read, nothing is forecast; line art and a
 * tone that is meant are left out, as a check leaves them out of what it says of all greys.
 */
export function settingsEffect(
  sides: { base: Side; head: Side },
  { before, after }: { before: JudgedBook; after: JudgedBook },
  paths: ReadonlySet<string>,
): SetForecast[] {
  const keyOf = ({ path, facts }: PictureReport) => `${facts.page} ${path}`;
  const was = new Map(before.pictures.map(picture => [keyOf(picture), picture]));
  return pairedTargets(sides.base.settings.targets, sides.head.settings.targets).flatMap(([from, to]) => {
    const pairs = after.pictures.flatMap(picture => {
      const earlier = paths.has(picture.path) ? was.get(keyOf(picture)) : undefined;
      const seen = [earlier && seenOn(earlier, from.name), seenOn(picture, to.name)];
      return seen[0] == null || seen[1] == null ? [] : [{ before: seen[0], after: seen[1] }];
    });
    if (!pairs.length) return [];
    const mean = (side: 'before' | 'after') =>
      pairs.reduce((sum, pair) => sum + pair[side], 0) / pairs.length;
    return [{ target: to.name, pages: pairs.length, before: mean('before'), after: mean('after') }];
  });
}

function seenOn(picture: PictureReport, name: string): number | null {
  const { targets, forecasts } = picture;
  if (!isToBeGrey(picture)) return null;
  return forecasts[targets.findIndex(target => target.name === name)]?.tint.seen ?? null;
}
