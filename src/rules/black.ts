import type { Forecast } from '../shared/forecast';

type Black = Pick<Forecast['range'], 'blackDeepest' | 'blackWeakest'>;

/** L* of the darkest black: `15`, or `11 to 15` where the ways of the print house differ. Never their mean. */
export function blackWords(range: Black): string {
  const [deepest, weakest] = ends(range);
  return deepest === weakest ? `${deepest}` : `${deepest} to ${weakest}`;
}

/** Whether it hangs on how the house prints it. */
export function isOpen(range: Black): boolean {
  const [deepest, weakest] = ends(range);
  return deepest !== weakest;
}

const ends = ({ blackDeepest, blackWeakest }: Black) => [blackDeepest, blackWeakest].map(Math.round);
