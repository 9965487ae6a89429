import type { PlacedAt } from '../shared/finding';
import type { PictureFacts } from '../shared/picture';

/** What is needed to know of a picture where it is mended. */
export interface Mended {
  facts: Partial<Pick<PictureFacts, 'unreadable'>>;
  placedAt?: readonly PlacedAt[];
}

/**
 * The first line that places a picture which is not there: the file that services would show does not exist, and that line
 * is where somebody mends it. Null: the picture is there, or no layout places it.
 */
export const blankAt = ({ facts, placedAt = [] }: Mended): PlacedAt | null =>
  facts.unreadable?.reason === 'missing' ? (placedAt[0] ?? null) : null;
