// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import path from 'node:path';
import { defaultTarget, forecastPicture, processes } from '../../print';
import { judge } from '../../rules';
import type { BookPicture, PictureReport } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { PictureFacts } from '../../shared/picture';
import type { Target } from '../../shared/target';

/** A picture that is in no book: forecasts for every process as it comes, and what can be said without knowing more. */
export function lonePicture(file: string, facts: PictureFacts): PictureReport {
  const targets = processes.map(({ id }) => defaultTarget(id));
  const intent = facts.encoding === 'bilevel' ? 'line' : facts.encoding === 'rgb-toned' ? 'toned' : 'grey';
  const picture: BookPicture = {
    path: path.basename(file),
    facts,
    intent,
    intentStated: false,
    part: null,
    placed: null,
    ...forecastsOn(targets, facts),
  };
  return { ...picture, findings: findingsOn(picture) };
}

/** Forecasts on those targets for which something can be said, and just these targets. */
export function forecastsOn(
  targets: readonly Target[],
  facts: PictureFacts,
): { targets: Target[]; forecasts: Forecast[] } {
  const pairs = targets.flatMap(target => {
    const forecast = forecastPicture(facts, target);
    return forecast ? [{ target, forecast }] : [];
  });
  return { targets: pairs.map(p => p.target), forecasts: pairs.map(p => p.forecast) };
}

/** Of the file itself only: nobody has said where it goes, so what a process would do is left to the forecasts. */
function findingsOn(picture: BookPicture) {
  const [findings] = judge({ pictures: [{ ...picture, targets: [], forecasts: [] }], targets: [] }).pictures;
  return findings;
}
