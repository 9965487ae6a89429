import { kindOf } from '../../rules/recommended';
import type { Match } from '../../shared/comparison';
import type { BookPicture } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';

/** How most of the others are stored that a picture is held against. */
export interface Others {
  /** It has any. */
  any: boolean;
  /** Of what it stands out, where more than half of them are stored otherwise than it; else null. */
  stored: NonNullable<Match['stored']> | null;
  /** More than half of them are stored as it is. */
  alike: boolean;
}

/** Of its part and intent, on a target (null: nobody said where it is printed); a picture does not count among its others. */
export function storedApart(
  book: readonly BookPicture[],
): (picture: BookPicture, target: string | null) => Others {
  const sets = new Map<string, Map<Encoding, number>>();
  const keyOf = ({ part, intent }: BookPicture, target: string | null) =>
    JSON.stringify([part, intent, target]);
  for (const picture of book) {
    const kind = kindOf(picture);
    if (kind === null || picture.replacedBy) continue;
    for (const target of [null, ...picture.targets.map(({ name }) => name)]) {
      const kinds = sets.get(keyOf(picture, target)) ?? new Map<Encoding, number>();
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
      sets.set(keyOf(picture, target), kinds);
    }
  }
  return (picture, target) => {
    const own = kindOf(picture);
    const others = [...(sets.get(keyOf(picture, target)) ?? [])]
      .map(([kind, many]) => ({ kind, many: kind === own ? many - 1 : many }))
      .filter(({ many }) => many > 0);
    const all = others.reduce((sum, { many }) => sum + many, 0);
    const most = others.find(({ many }) => many * 2 > all)?.kind ?? null;
    const isApart = most !== null && own !== null && most !== own;
    return {
      any: all > 0,
      stored: isApart ? { as: picture.facts.encoding, others: most } : null,
      alike: most === own && own !== null,
    };
  };
}
