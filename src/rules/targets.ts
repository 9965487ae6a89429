import { visibleShare } from '../print/bands';
import { processOf } from '../print/processes';
import type { BookPicture } from '../shared/finding';
import type { Forecast } from '../shared/forecast';
import type { Target } from '../shared/target';

/** ` (target "dummy")` where the book has more than one target, else nothing. */
export const forTarget = (target: Target, targets: readonly Target[]): string =>
  targets.length > 1 ? ` (target "${target.name}")` : '';

/** `silver halide`: a process as it stands inside a sentence, without what its name says in brackets. */
export function processName(target: Target): string {
  const [name] = processOf(target.process).name.split(' (');
  return name[0].toLowerCase() + name.slice(1);
}

/** Takes R, G, B in the end, not inks. */
export const isPhotographic = (target: Target): boolean => processOf(target.process).signal === 'rgb';

/** Ink values of a file may reach this press as they are. */
export const keepsInks = (target: Target): boolean =>
  !isPhotographic(target) && (target.route === 'inks' || target.route === 'unknown');

/** The targets of a picture that it has a forecast for. */
export function forecastsOf(picture: BookPicture): { target: Target; forecast: Forecast }[] {
  return picture.targets.flatMap((target, i) => {
    const forecast = picture.forecasts[i];
    return forecast ? [{ target, forecast }] : [];
  });
}

/** How near to the user's own print house a forecast is, for the end of a sentence. */
export function ground({ condition }: Forecast): string {
  switch (condition.basis) {
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

/** Mean probability (0-1) of a tint that is seen without a neutral beside it, over pictures and targets; 0 without forecasts. */
export function visibleTint(pictures: readonly BookPicture[]): number {
  const forecasts = pictures.flatMap(picture => picture.forecasts);
  const sum = forecasts.reduce((total, { tint }) => total + visibleShare(tint.bands), 0);
  return forecasts.length === 0 ? 0 : sum / forecasts.length;
}
