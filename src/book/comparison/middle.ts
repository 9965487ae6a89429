import { middleOf, type Tints, tintsOf } from '../../print/apart';
import { grouped } from '../../rules/groups';
import { kindOf } from '../../rules/recommended';
import type { BookPicture } from '../../shared/finding';

/** Among so many a picture hardly moves the middle that it is held against. */
const MANY = 4;

/** What a picture is held against on a target; null where there are no others. */
type MiddleFor = (picture: BookPicture, target: string) => Tints | null;

/**
 * The middle of those of a picture's part and intent that are stored as more than half of them are; where no way has the
 * majority, of those that are stored like it, and where none is, of all others. So a few odd ones, whether they changed or
 * not, do not move what the sound ones are measured by.
 */
export function middlesOf(book: readonly BookPicture[]): MiddleFor {
  const sets = new Map<string, (picture: BookPicture) => Tints | null>();
  return (picture, target) => {
    const { part, intent } = picture;
    const key = JSON.stringify([part, intent, target]);
    if (!sets.has(key)) {
      const together = book.filter(each => each.part === part && each.intent === intent);
      sets.set(key, withinSet(together, target));
    }
    return sets.get(key)!(picture);
  };
}

function withinSet(together: readonly BookPicture[], target: string): (picture: BookPicture) => Tints | null {
  const prints = together
    .filter(picture => kindOf(picture) !== null)
    .flatMap(picture =>
      picture.forecasts
        .filter((_, i) => picture.targets[i].name === target)
        .map(forecast => ({ picture, kind: kindOf(picture), tints: tintsOf(forecast) })),
    );
  type Prints = typeof prints;
  const kinds = grouped(prints, ({ kind }) => kind!);
  const most = kinds.find(group => group.length * 2 > prints.length);
  const middles = new Map<Prints, Tints | null>();
  const middleOfMany = (group: Prints) => {
    if (!middles.has(group)) middles.set(group, middleOf(group.map(({ tints }) => tints)));
    return middles.get(group)!;
  };
  return picture => {
    const { path, facts } = picture;
    const others = (group: Prints) =>
      group.filter(each => each.picture.path !== path || each.picture.facts.page !== facts.page);
    const like = most ?? kinds.find(([{ kind }]) => kind === kindOf(picture)) ?? [];
    if (like.length >= MANY) return middleOfMany(like);
    const rest = others(like);
    return middleOf((rest.length ? rest : others(prints)).map(({ tints }) => tints));
  };
}
