// no-unit-test: test/book/check.test.ts forecasts a book through it
import { forecastPicture } from '../print';
import type { BookPicture } from '../shared/finding';
import type { Forecast } from '../shared/forecast';
import type { PictureFacts } from '../shared/picture';
import type { Target } from '../shared/target';
import { breather } from './lanes';

const forecasts = new WeakMap<PictureFacts, Map<string, Forecast | null>>();

/** Forecasts pictures on their targets; writes into them. Gives way to other work every few milliseconds. */
export async function forecastAll(pictures: readonly BookPicture[], signal?: AbortSignal): Promise<void> {
  const breathe = breather();
  for (const picture of pictures) {
    picture.forecasts = picture.targets.flatMap(target => forecastOn(picture.facts, target) ?? []);
    await breathe();
    signal?.throwIfAborted();
  }
}

/** Forecasts pages while others are still read, so that it is done when they are wanted. */
export function forecastAhead(pages: readonly PictureFacts[], targets: readonly Target[]): void {
  for (const facts of pages) for (const target of targets) forecastOn(facts, target);
}

/** An editor checks a book again whenever one picture of it was saved: the others print as they did. */
function forecastOn(facts: PictureFacts, target: Target): Forecast | null {
  const known = forecasts.get(facts) ?? new Map<string, Forecast | null>();
  forecasts.set(facts, known);
  const key = JSON.stringify({ ...target, pressProfile: target.pressProfile?.id });
  const forecast = known.get(key) ?? forecastPicture(facts, target);
  known.set(key, forecast);
  return forecast;
}
