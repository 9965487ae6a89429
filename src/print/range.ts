import { labToSrgb } from '../colour/srgb';
import { fileRange } from './file-range';
import { relativeLabOfInks } from './inks/file-colour';
import { usualGeneration } from './inks/separation';
import type { Press } from './press';
import type { Handling } from './routes';
import type { SampledPicture } from './samples';

export interface TonalRange {
  /** L* of the darkest black that this encoding can print, and of the paper. */
  black: number;
  white: number;
  /** Share of the picture (0-1) too dark to be told from black. */
  blockedShare: number;
  /** The same without the file's own black: share whose shades are lost. */
  closedShare: number;
  /** Steps of L* 1 that the picture uses and that come out as black. */
  lostSteps: number;
}

/** Shadow steps within this many L* of black are lost (this project's collection of facts; common practice). */
export const LOST = 3;
/**
 * Tones within this many L* of the file's darkest are its own black: told apart by no eye, and what grain and JPEG make
 * of one black. Own choice.
 */
export const OWN = 1;

/** `printed`: print lightness of each zone of the picture. */
export function tonalRange(
  handling: Handling,
  picture: SampledPicture,
  press: Press,
  printed: readonly number[],
): TonalRange {
  const black = darkestBlack(handling, picture, press);
  return { black, white: press.model.white[0], ...lostBelow(picture, printed, black) };
}

/** What of the picture comes out as black. */
export function lostBelow(
  picture: SampledPicture,
  printed: readonly number[],
  black: number,
): Omit<TonalRange, 'black' | 'white'> {
  const sum = { blockedShare: 0, closedShare: 0, lostSteps: 0 };
  let ownBlack: number | null = null;
  eachTone(picture, printed, (L, Lprint, share) => {
    if (Lprint >= black + LOST) return;
    ownBlack ??= darkestOf(picture) + OWN;
    sum.blockedShare += share;
    if (L > ownBlack) sum.closedShare += share;
    sum.lostSteps++;
  });
  return sum;
}

/**
 * Lightness in the file and in print and share of the area, by steps of L* 1 where the file's histogram is known, else by
 * zone.
 */
function eachTone(
  picture: SampledPicture,
  printed: readonly number[],
  take: (L: number, Lprint: number, share: number) => void,
) {
  const { zones, histogram } = picture;
  if (!histogram) {
    for (const [i, { L, weight }] of zones.entries()) take(L, printed[i], weight);
    return;
  }
  const printedAt = toneCurve(zones.map(({ L }, i) => ({ L, Lprint: printed[i] })));
  for (let L = 0; L < histogram.length; L++) if (histogram[L] > 0) take(L, printedAt(L), histogram[L]);
}

/** L* of the file's darkest tone, whatever its encoding: solid black ink is no L* 0. */
const darkestOf = ({ zones, histogram }: SampledPicture) =>
  histogram ? fileRange(histogram).from : Math.min(...zones.map(({ L }) => L));

/** Print lightness by lightness of the file: linear between the zones, and on beyond them. */
export function toneCurve(zones: readonly { L: number; Lprint: number }[]): (L: number) => number {
  const points = zones.toSorted((a, b) => a.L - b.L);
  return L => {
    let i = 0;
    while (i < points.length - 2 && points[i + 1].L < L) i++;
    const from = points[i];
    const to = points[Math.min(i + 1, points.length - 1)];
    if (to.L === from.L) return from.Lprint;
    return from.Lprint + ((L - from.L) / (to.L - from.L)) * (to.Lprint - from.Lprint);
  };
}

function darkestBlack(handling: Handling, picture: SampledPicture, press: Press): number {
  const { daylight, reference } = press;
  const lab = new Float64Array(3);
  const at = (device: ArrayLike<number>) => {
    daylight.lab(device, null, lab);
    return lab[0];
  };
  switch (handling.kind) {
    case 'grey-to-black':
    case 'lightness-to-black':
      return reference.black;
    case 'separated':
      return at(press.separation.axis(handling.generation).inks.slice(-4));
    case 'to-rgb':
      return picture.space === 'cmyk'
        ? at(labToSrgb(relativeLabOfInks(fullInks(picture)), new Float64Array(3)))
        : at([0, 0, 0]);
    case 'kept': {
      if (daylight.dimensions === 3) return at([0, 0, 0]);
      const full = fullInks(picture);
      return full[0] + full[3] === 2 ? press.axis(usualGeneration(press.generations)).black : at(full);
    }
  }
}

/** Above this an ink is in use (the limit of `black-only` and `three-ink`). */
const IN_USE = 0.01;

/** Full tone of the inks that the picture uses: black alone, the three coloured ones, or all four. */
function fullInks(picture: SampledPicture): [number, number, number, number] {
  const uses = (inks: readonly number[]) =>
    picture.zones.some(zone => zone.clusters.some(({ mean }) => inks.some(ink => mean[ink] > IN_USE)));
  const coloured = uses([0, 1, 2]) ? 1 : 0;
  const black = uses([3]) || !coloured ? 1 : 0;
  return [coloured, coloured, coloured, black];
}
