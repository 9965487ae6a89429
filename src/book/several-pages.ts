import { list } from '../rules/words';
import type { BookPicture } from '../shared/finding';

/** Files that hold several pictures, which no conversion takes as they are. */
export function severalPagesNotices(pictures: readonly BookPicture[]): string[] {
  const files = [
    ...new Set(pictures.flatMap(({ path, facts }) => (facts.page > 1 && !facts.unreadable ? [path] : []))),
  ];
  if (!files.length) return [];
  const [hold, itIs] = files.length === 1 ? ['holds', 'it is'] : ['hold', 'they are'];
  return [
    `${list(files)} ${hold} several pages, each judged as a picture: save each page as a file of its own before ${itIs} converted.`,
  ];
}
