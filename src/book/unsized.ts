import type { BookPicture } from '../shared/finding';
import type { Settings } from './settings/settings';

/** Of how many pictures that layouts place nobody can tell how large they are printed; nothing where no rule asks it. */
export function unsizedNotices(
  pictures: readonly BookPicture[],
  { rules, textWidth }: Pick<Settings, 'rules' | 'textWidth'>,
): string[] {
  if (rules['low-resolution'] === 'off') return [];
  const placed = pictures.filter(
    ({ placedAt, facts, replacedBy }) =>
      placedAt?.length && facts.page === 1 && facts.encoding !== 'unreadable' && !replacedBy,
  );
  const many = placed.filter(({ placed }) => !placed).length;
  if (!many) return [];
  const which =
    many === 1
      ? 'One picture that a layout places has no printed size that can be read there, so whether it has enough pixels is'
      : `${many} of the ${placed.length} pictures that layouts place have no printed size that can be read there, so whether they have enough pixels is`;
  const width = textWidth === null ? ', or say "textWidth" where they are shares of the text' : '';
  return [
    `${which} not judged: give a size in the layout or its style sheet, or under "placements"${width}.`,
  ];
}
