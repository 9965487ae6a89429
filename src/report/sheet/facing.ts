import type { FacingPicture } from '../../shared/facing';
import type { PictureReport } from '../../shared/finding';
import { CONTACT_DRAWS } from './contact';
import { drawingOf } from './drawn';

/**
 * A picture as it is drawn beside another, in the orders that stand for all: by the targets of that name, one after the
 * other.
 */
export function facingDrawings(
  { targets, forecasts, intent, facts }: PictureReport,
  names: readonly string[],
): FacingPicture['drawings'] {
  const line = intent === 'line' || facts.encoding === 'bilevel';
  return names.map(name => {
    const forecast = forecasts[targets.findIndex(target => target.name === name)];
    return forecast && !line ? CONTACT_DRAWS.map(draw => drawingOf(forecast, draw)) : null;
  });
}
