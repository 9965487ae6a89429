import { type Apart, apart } from '../../print/apart';
import type { ApartOptions } from '../apart';
import type { Print } from './prints';

export interface Pair {
  one: Print;
  other: Print;
  apart: Apart;
}

/** The two prints that are most likely to be seen as two greys side by side; null where none are. */
export function worstPair(prints: readonly Print[], options: ApartOptions): Pair | null {
  let worst: Pair | null = null;
  for (const [i, one] of prints.entries())
    for (const other of prints.slice(i + 1)) {
      const away = apart(one.tints, other.tints, options.limit);
      if (!away || !isSeen(away, options)) continue;
      if (!worst || isWorse(away, worst.apart)) worst = { one, other, apart: away };
    }
  return worst;
}

/** What equal files do too is the printer's matter. */
export const isSeen = ({ probability, byPrinter }: Apart, { chance }: ApartOptions): boolean =>
  probability >= chance && byPrinter < chance;

const isWorse = (one: Apart, other: Apart): boolean =>
  one.probability === other.probability ? one.size > other.size : one.probability > other.probability;
