import type { BookPicture } from '../shared/finding';
import type { Settings } from './settings/settings';

/** What is sharp at no size above this is told, long edge in mm: a small picture of a book. Own choice. */
const SMALL = 100;
/** Pixels an inch that are wanted: the default of `low-resolution`. */
const WANTED = 200;
const MM = 25.4;
/** So many are named. */
const NAMED = 3;

/** Of how many pictures that layouts place nobody can tell how large they are printed; nothing where no rule asks it. */
export function unsizedNotices(
  pictures: readonly BookPicture[],
  { rules, textWidth }: Pick<Settings, 'rules' | 'textWidth'>,
): string[] {
  if (rules['low-resolution'] === 'off') return [];
  return [...withoutSize(pictures, textWidth), ...small(pictures)];
}

/** Pictures that no layout places and no line of the settings gives a size, and that have few pixels for any. */
function small(pictures: readonly BookPicture[]): string[] {
  const few = pictures.filter(
    ({ placedAt, placed, facts, replacedBy }) =>
      !placedAt?.length && !placed && !replacedBy && !facts.unreadable && longEdge(facts) < SMALL,
  );
  if (!few.length) return [];
  const named = few
    .slice(0, NAMED)
    .map(({ path, facts }) => `${path}, ${Math.round(longEdge(facts))} mm`)
    .join('; ');
  const more = few.length > NAMED ? `; and ${few.length - NAMED} more` : '';
  const [which, they] =
    few.length === 1 ? ['A picture has', 'it is'] : [`${few.length} pictures have`, 'they are'];
  return [
    `${which} few pixels (printed with ${WANTED} an inch: ${named}${more}), and nobody said how large ${they} to be, so whether that is enough is not judged: give a size under "placements", or in a layout.`,
  ];
}

/** Printed at the pixels an inch that are wanted, mm. */
const longEdge = ({ width, height }: BookPicture['facts']): number => (Math.max(width, height) / WANTED) * MM;

function withoutSize(pictures: readonly BookPicture[], textWidth: Settings['textWidth']): string[] {
  const placed = pictures.filter(
    ({ placedAt, facts, replacedBy }) =>
      placedAt?.length && facts.page === 1 && facts.encoding !== 'unreadable' && !replacedBy,
  );
  const many = placed.filter(({ placed }) => !placed).length;
  if (!many) return [];
  const some = many === placed.length ? `All ${many}` : `${many} of the ${placed.length}`;
  const which =
    many === 1
      ? 'One picture that a layout places has no printed size that can be read there, so whether it has enough pixels is'
      : `${some} pictures that layouts place have no printed size that can be read there, so whether they have enough pixels is`;
  const width = textWidth === null ? ', or say "textWidth" where they are shares of the text' : '';
  return [
    `${which} not judged: give a size in the layout or its style sheet, or under "placements"${width}.`,
  ];
}
