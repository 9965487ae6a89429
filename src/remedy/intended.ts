// no-unit-test: picture.test.ts goes through it with every layout
import type { Samples } from '../picture/types';
import type { Moved, RemedyFormat, RemedyWish, SourceFacts } from '../shared/remedy';
import { greyPlane } from './grey';
import { faintColourRemoved } from './grey/colour-kept';
import { onPaper } from './grey/flatten';
import type { TonePlane } from './grey/plane';
import { rampLightness } from './grey/ramp';
import { singleOf } from './grey/single';
import { tinted, tintLine } from './grey/tint';
import { upright } from './grey/turn';
import { movedBetween } from './moved';
import type { ReadPicture } from './source';
import { type SourceBlack, shiftedTones } from './tone/shift';

/** What a result is to look like, as lightness and tint of every pixel, and what there is to tell and record of it. */
export function intended(
  { samples, reading, header }: ReadPicture,
  facts: Omit<SourceFacts, 'sha256'>,
  wish: RemedyWish,
  format: RemedyFormat,
): { plane: TonePlane; told: string[]; black: string | null; moved: Moved | null } {
  const { meaning } = reading;
  const opaque = format === 'jpeg' || wish.to === 'black-only';
  const seen = opaque ? onPaper(samples) : samples;
  const told =
    seen === samples ? [] : ['What is transparent was laid on white, since the result has no transparency.'];
  const grey =
    wish.to === 'rgb-neutral' && wish.below !== null
      ? faintColourRemoved(seen, meaning, wish.below)
      : greyPlane(seen, meaning, wish.grey);
  if (wish.to === 'rgb-toned')
    grey.tint = tinted(grey.lightness, tintLine(wish.tone, facts.chroma ?? { zones: [] }));
  const shifted = shiftedTones(grey, blackOf(facts, meaning), wish);
  told.push(...shifted.told);
  const own = () => greyPlane(seen, meaning, { kind: 'lightness' });
  const moved = movedBetween(mixes(wish, seen) ? own() : grey, shifted.plane, wish, shifted.blackMoved);
  const plane = wish.upright ? upright(shifted.plane, header.orientation) : shifted.plane;
  return { plane, told, black: shifted.black, moved };
}

/** Whether the method can make a tone lighter or darker than its colour looks: grey has no colour. */
const mixes = ({ grey, to, below }: RemedyWish, seen: Samples): boolean =>
  grey.kind !== 'lightness' && (to !== 'rgb-neutral' || below === null) && singleOf(seen) === null;

function blackOf(
  { encoding, space }: Omit<SourceFacts, 'sha256'>,
  meaning: ReadPicture['reading']['meaning'],
): SourceBlack {
  if (space !== 'cmyk') return { kind: 'light' };
  if (encoding !== 'black-only') return { kind: 'none' };
  return { kind: 'ink', L: rampLightness(meaning, 'cmyk', 256)[255] };
}
