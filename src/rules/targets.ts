import { isForeign } from '../print/choice';
import { processOf } from '../print/processes';
import type { BookPicture } from '../shared/finding';
import type { Basis, Forecast } from '../shared/forecast';
import type { Target } from '../shared/target';

/** ` (target "dummy")` where the book has more than one target, else nothing. */
export const forTarget = (target: Target, targets: readonly Target[]): string =>
  targets.length > 1 ? ` (target "${target.name}")` : '';

/** `coated offset`: a process as it stands inside a sentence. */
export const processName = (target: Target): string => processOf(target.process).inSentence;

/** Takes R, G, B in the end, not inks. */
export const isPhotographic = (target: Target): boolean => processOf(target.process).signal === 'rgb';

/** Ink values of a file may reach this press as they are. */
export const keepsInks = (target: Target): boolean =>
  !isPhotographic(target) && (target.route === 'inks' || target.route === 'unknown');

/**
 * Said after a forecast of inks on a process that takes R, G, B, unless the print house's own prints were read: nobody
 * says what it does with them, and all that follows hangs on it. With a space before it, or nothing.
 */
export const guessOfInks = ({ facts }: BookPicture, { condition }: Forecast): string =>
  facts.space === 'cmyk' && condition.route === 'rgb' && condition.basis !== 'record'
    ? ' This stands on a guess about what the print house does with inks: that it turns them into R, G, B through a usual press profile.'
    : '';

/** The targets of a picture that it has a forecast for. */
export function forecastsOf(picture: BookPicture): { target: Target; forecast: Forecast }[] {
  return picture.targets.flatMap((target, i) => {
    const forecast = picture.forecasts[i];
    return forecast ? [{ target, forecast }] : [];
  });
}

/** Whether a picture says how much ink to a process that prints from R, G, B: it is to become another file, as `likely-tint` says. */
export function hasForeignInks(picture: BookPicture, target: Target): boolean {
  const print = forecastsOf(picture).find(print => print.target.name === target.name);
  return isForeign(picture.facts.encoding, target, print?.forecast.condition.reading ?? null);
}

/** How near to the user's own print house a forecast is, for the end of a sentence. */
export const ground = ({ condition }: Forecast): string => basisWords(condition.basis);

/** The same; of a record also how many orders, when, and how far they differ, which its forecast rests on first. */
export const groundInFull = (forecast: Forecast): string =>
  forecast.condition.basis === 'record' ? `${ground(forecast)}: ${forecast.ground[0]}` : ground(forecast);

/** What the forecasts of pictures on a target rest on, each once. */
export const groundsOn = ({ name }: Target, pictures: readonly BookPicture[]): string[] => [
  ...new Set(
    pictures.flatMap(({ targets, forecasts }) =>
      forecasts.filter((_, i) => targets[i].name === name).map(groundInFull),
    ),
  ),
];

/** How near it is, by the basis that a finding carries in its data. */
export function basisWords(basis: Basis): string {
  switch (basis) {
    case 'record':
      return 'by what this print house has delivered before';
    case 'profile':
      return "by the print house's profile, with a generic scatter";
    case 'data':
      return 'by public press data: a generic process, not your printer';
    default:
      return 'generic process, not your printer';
  }
}
