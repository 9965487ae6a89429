import type { Tints } from '../../print/apart';
import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { tintsByTarget } from '../apart';
import { grouped } from '../groups';
import { hasForeignInks } from '../targets';
import { toneSteps } from '../tone-lines';

/** A picture as it prints on a target; where nobody said on which, as its file has it. */
export interface Print {
  picture: BookPicture;
  target: Target | null;
  tints: Tints;
}

/** The pictures on each of their targets, and together those that have none. What is to become another file is not compared. */
export function printsOf(pictures: readonly BookPicture[]): Print[][] {
  const prints = pictures.flatMap((picture): Print[] =>
    picture.targets.length
      ? tintsByTarget(picture)
          .filter(({ target }) => !hasForeignInks(picture, target))
          .map(print => ({ picture, ...print }))
      : asStored(picture).map(tints => ({ picture, target: null, tints })),
  );
  return grouped(prints, ({ target }) => target?.name ?? '');
}

/** What printing adds is not known, and the same for all. Inks are a colour on a press alone; greys have none. */
function asStored({ facts }: BookPicture): Tints[] {
  const zones = facts.space === 'rgb' ? toneSteps(facts) : [];
  const none = { a: 0, b: 0 };
  return zones.length ? [{ zones, spread: { house: none, order: none, page: none } }] : [];
}
