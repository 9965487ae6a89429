// no-unit-test: test/remedy/plan/index.test.ts plans by it
import type { Format } from '../../shared/picture';
import type { RemedyWish } from '../../shared/remedy';
import { formatChange, formatOf, pngChange, pngWouldDo } from '../format';
import { luminanceStays } from '../luminance';
import type { Asked, Order, Place } from './types';

/** The format and depth that a picture's result will have. @throws RemedyError where the wish contradicts itself */
export function storedAs(
  { pages: [facts], luminance }: Asked,
  wish: RemedyWish,
  place: Place,
): Pick<Order, 'format' | 'bits' | 'wish' | 'change'> {
  const meant = wishAt(place, facts.format, wish);
  const stays = luminanceStays(luminance, facts, meant);
  const format = formatOf(facts.format, meant, stays === 'surely');
  const bits = format === 'jpeg' ? 8 : (wish.bits ?? (facts.bits > 8 ? 16 : 8));
  return { format, bits, wish: meant, change: formatChange(facts.format, meant, stays) };
}

/** The same as a PNG, where it would be a TIFF unasked, as its source is or not, and a PNG holds it too; null where not. */
export function storedAsPng(
  { pages: [facts], luminance }: Asked,
  { format, bits, wish }: ReturnType<typeof storedAs>,
): (ReturnType<typeof storedAs> & { toldSince: (why: string) => string }) | null {
  const source = facts.format;
  if (wish.format !== null || !pngWouldDo({ format, to: wish.to })) return null;
  const toldSince = (why: string) => pngChange(source, wish, luminanceStays(luminance, facts, wish), why);
  return { format: 'png', bits, wish: { ...wish, format: 'png' }, change: null, toldSince };
}

/** A picture that is replaced keeps its format where that can hold the result at all: its name says what it is. */
const wishAt = ({ kind }: Pick<Place, 'kind'>, source: Format, wish: RemedyWish): RemedyWish =>
  kind === 'in-place' && source === 'jpeg' && wish.format === null && wish.bits !== 16
    ? { ...wish, format: 'jpeg' }
    : wish;

/** Why a result cannot stand under its picture's own name; null where it can. */
export function otherFormat(asked: Asked, wish: RemedyWish): string | null {
  const { format, change } = storedAs(asked, wish, { kind: 'in-place' });
  if (format === asked.pages[0].format) return null;
  return change ?? 'A file of another format wants another name.';
}
