import type { Forecast } from '../../shared/forecast';

/** L* of the darkest black: `15`, or `11 to 15` where the ways of the print house differ. Never their mean. */
export function blackWords({
  blackDeepest,
  blackWeakest,
}: Pick<Forecast['range'], 'blackDeepest' | 'blackWeakest'>): string {
  const [deepest, weakest] = [blackDeepest, blackWeakest].map(Math.round);
  return deepest === weakest ? `${deepest}` : `${deepest} to ${weakest}`;
}
