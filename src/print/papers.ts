import type { AB } from '../shared/forecast';
import type { MeasuredPaper, PaperId } from '../shared/target';

/** How much brightener a paper holds: the classes of ISO 15397 by the difference of D65 brightness with and without UV. */
export type Brightener = 'none' | 'faint' | 'low' | 'moderate' | 'high';

export interface Paper {
  id: PaperId | 'measured';
  name: string;
  /** CIELAB D50, M1 where the source says so, white backing. */
  white: readonly [number, number, number];
  brightener: Brightener;
  surface: 'photographic' | 'coated' | 'uncoated' | 'measured';
  /** One standard deviation of papers sold as this kind. */
  spread: AB;
  /** Where the white comes from. */
  ground: string;
}

// Spread of b*: coated 1.8, uncoated 3 (this project's own proposal from the whites in the sources below); a*: a third
// of it, photographic papers: guesses.
const COATED: AB = { a: 0.6, b: 1.8 };
const UNCOATED: AB = { a: 1, b: 3 };
const PHOTOGRAPHIC: AB = { a: 0.6, b: 1.5 };
/** One instrument against another, 0.3-1 dE00, and one sheet against the next. */
const MEASURED: AB = { a: 0.2, b: 0.4 };

export const papers: readonly Paper[] = [
  {
    id: 'photo-gloss',
    name: 'Glossy photographic paper',
    white: [94, 0.5, -3.5],
    brightener: 'faint',
    surface: 'photographic',
    spread: PHOTOGRAPHIC,
    ground: 'from memory, medium confidence',
  },
  {
    id: 'photo-lustre',
    name: 'Lustre photographic paper',
    white: [93.5, 0.5, -3],
    brightener: 'faint',
    surface: 'photographic',
    spread: PHOTOGRAPHIC,
    ground: 'from memory, medium confidence',
  },
  {
    id: 'gloss-coated',
    name: 'Gloss coated paper',
    white: [95, 0, -2],
    brightener: 'low',
    surface: 'coated',
    spread: COATED,
    ground: 'ANSI/CGATS TR 006; FOGRA39 has the same white',
  },
  {
    id: 'gloss-coated-bright',
    name: 'Gloss coated paper, brightened',
    white: [95, 1.5, -6],
    brightener: 'moderate',
    surface: 'coated',
    spread: COATED,
    ground: 'FOGRA51 (M1, ISO 12647-2:2013 paper type 1)',
  },
  {
    id: 'matt-coated',
    name: 'Matt coated paper',
    white: [95, 1, -4],
    brightener: 'moderate',
    surface: 'coated',
    spread: COATED,
    ground: 'ISO 12647-2:2013 paper type 1, from a secondary source',
  },
  {
    id: 'grade-3-coated',
    name: 'Grade 3 coated paper',
    white: [92.5, 0, 0],
    brightener: 'none',
    surface: 'coated',
    spread: COATED,
    ground: 'ANSI/CGATS TR 003',
  },
  {
    id: 'grade-5-coated',
    name: 'Grade 5 coated paper',
    white: [90, 0, 4.1],
    brightener: 'none',
    surface: 'coated',
    spread: COATED,
    ground: 'ANSI/CGATS TR 005',
  },
  {
    id: 'uncoated',
    name: 'Uncoated paper',
    white: [95, 0, -2],
    brightener: 'low',
    surface: 'uncoated',
    spread: UNCOATED,
    ground: 'FOGRA47',
  },
  {
    id: 'uncoated-bright',
    name: 'Uncoated paper, brightened',
    white: [93.5, 2.5, -10],
    brightener: 'high',
    surface: 'uncoated',
    spread: UNCOATED,
    ground: 'FOGRA52 (M1, ISO 12647-2:2013 paper type 5)',
  },
  {
    id: 'uncoated-warm',
    name: 'Uncoated paper, warm white',
    white: [90, 0, 9],
    brightener: 'none',
    surface: 'uncoated',
    spread: UNCOATED,
    ground: 'ISO 12647-2:2004 paper type 5 (yellowish), from a secondary source',
  },
];

/** The paper of a target: one of the list, or the user's own measurement. */
export function paperOf(paper: PaperId | MeasuredPaper): Paper {
  if (typeof paper === 'string') {
    const known = papers.find(candidate => candidate.id === paper);
    if (!known) throw new Error(`no paper "${paper}"; known are ${papers.map(p => p.id).join(', ')}`);
    return known;
  }
  return {
    id: 'measured',
    name: 'Your own paper, as measured',
    white: paper.lab,
    brightener: paper.brightened ?? 'none',
    surface: 'measured',
    spread: MEASURED,
    ground: 'your own measurement',
  };
}
