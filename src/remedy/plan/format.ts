// no-unit-test: test/remedy/plan/index.test.ts plans by it
import type { Format, PictureFacts } from '../../shared/picture';
import type { RemedyFormat, RemedyWish } from '../../shared/remedy';
import { formatChange, formatOf } from '../format';

/** The format and depth that a picture's result will have. @throws RemedyError where the wish contradicts itself */
export function storedAs(
  { format: source, bits }: Pick<PictureFacts, 'format' | 'bits'>,
  wish: RemedyWish,
): { format: RemedyFormat; bits: 8 | 16 } {
  const format = formatOf(source, wish);
  return { format, bits: format === 'jpeg' ? 8 : (wish.bits ?? (bits > 8 ? 16 : 8)) };
}

/** Why a result cannot stand under its picture's own name; null where it can. */
export function otherFormat(source: Format, wish: RemedyWish): string | null {
  if (formatOf(source, wish) === source) return null;
  return formatChange(source, wish) ?? 'A file of another format wants another name.';
}
