// no-unit-test: test/rules/likely-tint/index.test.ts reads them
import { SAME_BLACK } from '../../print/choice';
import { inOrdersOfMany, leaning } from '../words';
import { lean, mean, type Print } from './prints';

/**
 * Of inks that mean nothing to the process: what they print, and what the other encoding does, where the one can be set
 * against the other. With a space before it, or nothing.
 */
export function figuresOf(group: readonly Print[]): string {
  const { comparable, recommendation } = group[0].better!;
  if (!comparable) return '';
  const now = inOrdersOfMany(group.map(({ probability }) => probability));
  const then = inOrdersOfMany(group.map(print => print.better!.probability));
  const [black, other] = [blackOf(group), betterBlackOf(group)];
  const isFlatter = black - other >= SAME_BLACK;
  const blacks = (L: number) => (isFlatter ? `, and black prints as L* ${L.toFixed(0)}` : '');
  return ` By the forecast a tint is seen${leaning(lean(group))} ${now}${blacks(black)}; as ${recommendation.encoding} ${then}${blacks(other)}.`;
}

export const blackOf = (group: readonly Print[]) => mean(group.map(({ forecast }) => forecast.range.black));
export const betterBlackOf = (group: readonly Print[]) =>
  mean(group.map(print => print.better!.forecast.range.black));
