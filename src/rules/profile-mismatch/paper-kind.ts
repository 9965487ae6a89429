import type { Target } from '../../shared/target';

export type PaperKind = 'coated' | 'uncoated';

/** Open data sets of press conditions by their names in profile descriptions. */
const sets: [RegExp, PaperKind][] = [
  [/fogra\s?-?(29|30|44|47|52)\b|crpc\s?-?3\b/i, 'uncoated'],
  [/fogra\s?-?(27|28|39|43|45|46|51)\b|crpc\s?-?[5-7]\b|\btr\s?00[1356]\b/i, 'coated'],
  [/uncoated/i, 'uncoated'],
  [/coated/i, 'coated'],
];

/** The paper that a press profile was made for, by its description; null where that says nothing. */
export function paperKindOfProfile(description: string): PaperKind | null {
  return sets.find(([pattern]) => pattern.test(description))?.[1] ?? null;
}

/** Null for a paper of the user's own, of which only the white is known, on a process for either. */
export function paperKindOfTarget({ process, paper }: Target): PaperKind | null {
  if (process === 'offset-uncoated') return 'uncoated';
  if (process === 'offset-coated') return 'coated';
  if (typeof paper !== 'string') return null;
  return paper.startsWith('uncoated') ? 'uncoated' : 'coated';
}
