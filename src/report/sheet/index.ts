import { lights } from '../../print';
import { printedScale, uprightSize } from '../../rules/printed';
import type { Finding, PictureReport } from '../../shared/finding';
import type { BookPlace, Sheet, ShownFinding } from '../../shared/sheet';
import type { LightId } from '../../shared/target';
import { adviceOn } from './advice';
import { conditionOf } from './condition';
import { encodings } from './encoding';
import { factLines } from './facts';
import { fileScale } from './orders';
import { concerns } from './shared';

export interface SheetOptions {
  /** The light that was asked for, if any: the forecasts of `picture` are for it then. */
  light: LightId | null;
  /** Which ten possible orders are drawn: 0, 1, 2 ... */
  series: number;
  /** How many pages the file has. */
  pages?: number;
  /** Its neighbours in the book. */
  place?: BookPlace | null;
}

/** A picture's page as words and colours. `shared`: what the report says of the book as a whole. */
export function sheetOf(
  picture: PictureReport,
  shared: readonly Finding[],
  { light, series, pages = 1, place = null }: SheetOptions,
): Sheet {
  const { path, facts, forecasts, targets, findings, intent } = picture;
  // its strips would show greys that it has not got
  const isLine = intent === 'line' || facts.encoding === 'bilevel';
  return {
    path,
    page: facts.page,
    pages,
    size: facts.width > 0 ? { ...uprightSize(facts), printed: printedScale(picture) } : null,
    place,
    advice: adviceOn(picture, shared),
    encoding: { id: facts.encoding, ...encodings[facts.encoding] },
    facts: factLines(picture),
    findings: findings.map(shown),
    shared: shared.filter(finding => concerns(finding, picture)).map(shown),
    scale: fileScale,
    conditions: isLine
      ? []
      : forecasts.map((forecast, i) => conditionOf(targets[i], forecast, series, facts)),
    lights: lights.map(({ id, name }) => ({ id, name })),
    light,
    series,
  };
}

const shown = ({ rule, severity, message }: Finding): ShownFinding => ({ rule, severity, message });
