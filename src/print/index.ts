import type { Forecast } from '../shared/forecast';
import type { PictureFacts } from '../shared/picture';
import type { Target } from '../shared/target';
import { forecast } from './forecast';
import { samplesOf } from './samples';
import { type StatedValue, sampledValue } from './values';

export { adviceFor, adviceTable, type EncodingAdvice, papersFor } from './evenness';
export { paperProblem, routeProblem, signalOf } from './fit';
export { type Lean, leanOf } from './lean';
export { lights } from './lights';
export { papers } from './papers';
export { processes } from './processes';
export { profileProblem } from './profile/printing';
export { readPressProfile } from './profile/read';
export { parsePrintRecord, recordProblem } from './record/read';
export { defaultTarget } from './target';
export type { StatedValue } from './values';

/**
 * How the picture is expected to print on the target. Null where nothing can be said: unreadable, colour, or without
 * an opaque pixel. Throws if the target names a process or paper that is not known.
 */
export function forecastPicture(facts: PictureFacts, target: Target): Forecast | null {
  if (facts.encoding === 'colour' || facts.encoding === 'unreadable') return null;
  const picture = samplesOf(facts);
  if (!picture) return null;
  return forecast(picture, target);
}

/**
 * The same for a stated value of one grey. Ink values are sent as they are unless the target names another route.
 * Throws a `RangeError` for a value out of range.
 */
export function forecastValue(value: StatedValue, target: Target): Forecast {
  const picture = sampledValue(value);
  const route = target.route === 'unknown' && value.space === 'cmyk' ? 'inks' : target.route;
  return forecast(picture, { ...target, route });
}
