import type { PictureReport } from '../../shared/finding';
import type { ForecastChange } from '../../shared/remedies';
import type { Condition } from '../../shared/sheet';
import { conditionOf } from './condition';

/**
 * What a conversion changes in the forecasts of a picture, for each target that its result can be forecast on: how often
 * a tint is seen, how many orders are even, how dark the black is; and every other figure that changes. A picture in
 * colour has no forecast of its own: then what will be stands alone.
 */
export function changesOf(before: Foreseen, after: Foreseen): ForecastChange[] {
  return after.forecasts.map((forecast, i) => {
    const target = after.targets[i];
    const at = before.targets.findIndex(({ name }) => name === target.name);
    const own = before.forecasts[at];
    const was = own ? conditionOf(target, own, 0, before.facts) : null;
    const is = conditionOf(target, forecast, 0, after.facts);
    const { process, paper, light, basisWords } = is;
    return {
      process,
      paper,
      light,
      basisWords,
      rows: rowsOf(was, is, noneOf(before)),
      more: was ? othersOf(was, is) : [],
    };
  });
}

/** A picture with its forecasts, one a target in the same order, or none at all. */
export type Foreseen = Pick<PictureReport, 'facts' | 'targets' | 'forecasts'>;

const ORDERS = 'Orders of 10 without a visible tint';
const BLACK = 'Deepest black, L*';

const noneOf = ({ facts }: Foreseen): string =>
  facts.encoding === 'colour' ? 'no forecast: it is in colour' : 'no forecast';

const rowsOf = (was: Condition | null, is: Condition, none: string): ForecastChange['rows'] => [
  { label: 'A tint', before: was?.expect.tint ?? none, after: is.expect.tint },
  { label: ORDERS, before: was?.own.even ?? none, after: is.own.even },
  { label: BLACK, before: was?.own.black ?? none, after: is.own.black },
];

function othersOf(was: Condition, is: Condition): ForecastChange['more'] {
  const after = new Map(is.figures);
  return was.figures.flatMap(([label, before]) => {
    const then = after.get(label);
    return then !== undefined && then !== before ? [{ label: label.trim(), before, after: then }] : [];
  });
}
