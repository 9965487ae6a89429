import { type Apart, apart, middleOf, type Tints } from '../../print/apart';
import type { ApartOptions } from '../apart';
import { isSeen } from './pairs';
import type { Print } from './prints';

/** One that is likely to be seen to differ from the others. */
export interface Odd extends Print {
  apart: Apart;
}

/** Prints by whether they match one middle; in neither are those that hold none of its lightnesses. */
export interface Sets {
  alike: Print[];
  odd: Odd[];
}

/** So many prints at most are tried as the one that the others are like. Own choice: a large set is not compared pair by pair. */
const TRIED = 12;

/**
 * The prints that are alike, lightness for lightness, and those that are off them: alike is what matches the middle of all;
 * where fewer than half do, as with two tones whose middle nobody has, the largest set that one of the prints gathers.
 */
export function againstTheAlike(prints: readonly Print[], options: ApartOptions): Sets {
  const ofAll = matching(prints, middle(prints), options);
  if (ofAll.alike.length * 2 > prints.length) return ofAll;
  const gathered: Sets[] = [];
  // what belongs to a set would gather much the same one again
  for (const print of tried(prints))
    if (!gathered.some(({ alike }) => alike.includes(print)))
      gathered.push(matching(prints, print.tints, options));
  const largest = gathered.reduce((most, sets) => (sets.alike.length > most.alike.length ? sets : most));
  const centred = matching(prints, middle(largest.alike), options);
  return centred.alike.length < largest.alike.length ? largest : centred;
}

function matching(prints: readonly Print[], tints: Tints | null, options: ApartOptions): Sets {
  const sets: Sets = { alike: [], odd: [] };
  for (const print of prints) {
    const away = tints && apart(print.tints, tints, options.limit);
    if (!away) continue;
    if (isSeen(away, options)) sets.odd.push({ ...print, apart: away });
    else sets.alike.push(print);
  }
  return sets;
}

const middle = (prints: readonly Print[]) => middleOf(prints.map(({ tints }) => tints));

/** Evenly from all of them: those that lie together in a book are often of one kind. */
function tried(prints: readonly Print[]): readonly Print[] {
  const step = Math.max(1, prints.length / TRIED);
  return prints.filter((_, i) => Math.floor(i / step) !== Math.floor((i - 1) / step)).slice(0, TRIED);
}
