import { monotoneCurve } from '../../colour/press/curve';
import { fileRange } from '../../print/file-range';
import { type PrintedTones, printedTones } from '../../print/printed-tones';
import { LOST, OWN } from '../../print/range';
import type { LightnessCurve, RemedyEncoding } from '../../shared/remedy';
import type { GreyEncoding, Target } from '../../shared/target';
import { fitWords } from './fit-words';

/** How far tones are fitted to a printable range, each 0-1. */
export interface FitStrength {
  /** Shadows are lifted until they can be told from black. */
  shadows: number;
  /** Tones that print darker than their place between black and paper are lightened to it. */
  lighten: number;
}

/** A curve for the file's lightness and what it does. */
export interface Fit {
  /** Null: there is nothing to fit. */
  curve: LightnessCurve | null;
  tones: PrintedTones;
  told: string[];
}

/** From this L* of the file on, lifting the shadows changes nothing (own choice). */
const KNEE = 65;
/** Tones that would move by less are left alone. */
const LEAST = 0.25;

/**
 * A lightness curve that brings the tones of a picture into what a target can print: smooth, rising, white and lights
 * fixed. At full strength the picture's own black stays as good as black, and everything above it can be told from it;
 * the shadows share what is between evenly. It rests on the forecast for greys in that encoding, and says on what
 * that rests.
 * @param to what the picture will be stored as
 * @param histogram share of the area by whole L* of the file (0-100); null: all tones are used
 */
export function fitCurve(
  target: Target,
  to: RemedyEncoding,
  strength: FitStrength,
  histogram: readonly number[] | null,
): Fit {
  const tones = printedTones(greyOf(to), target);
  const base = tones.printed.map((L, i) => Math.max(L, L + strength.lighten * (tones.proportional[i] - L)));
  const darkest = histogram ? fileRange(histogram).from : 0;
  const wanted = withOpenShadows(base, tones.black, darkest, strength.shadows);
  const curve = smooth(wanted.map((L, i) => (i === 100 ? 100 : fileLightness(L, tones.printed)))).map(tidy);
  const moves = curve.some((L, i) => Math.abs(L - i) >= LEAST);
  const kept = moves ? curve : null;
  return { curve: kept, tones, told: fitWords(target, tones, kept, histogram, strength) };
}

const greyOf = (to: RemedyEncoding): GreyEncoding => (to === 'rgb-toned' ? 'rgb-neutral' : to);

/** Print lightness by whole L* of the file, with the shadows of a picture whose darkest tone is `darkest` lifted. */
function withOpenShadows(base: readonly number[], black: number, darkest: number, share: number): number[] {
  const toe = darkest + OWN;
  const lift = black + LOST - base[Math.min(100, toe)];
  if (lift <= 0 || share === 0 || toe >= KNEE) return [...base];
  // from the first tone that can be told from black, up to the tones that stay, without a bend where they meet
  const open = monotoneCurve([toe, KNEE, KNEE + 1], [black + LOST, base[KNEE], base[KNEE + 1]]);
  const slope = open(toe + 1) - open(toe);
  return base.map((L, i) => {
    if (i >= KNEE) return L;
    const opened = i >= toe ? open(i) : black + LOST - (toe - i) * slope;
    return L + share * Math.max(0, opened - L);
  });
}

/** L* of the file that prints so light: the other way round along a rising scale. */
function fileLightness(L: number, printed: readonly number[]): number {
  if (L <= printed[0]) return 0;
  const above = printed.findIndex(value => value >= L);
  if (above < 0) return 100;
  const [dark, light] = [printed[above - 1], printed[above]];
  return above - 1 + (L - dark) / (light - dark);
}

/** Binomial weights over two steps each way: takes out the corners that tables leave. */
const WEIGHTS = [1 / 16, 1 / 4, 3 / 8, 1 / 4, 1 / 16];

/** Ends stay where they are: beyond them the curve goes on as its mirror image. */
function smooth(curve: readonly number[]): number[] {
  const last = curve.length - 1;
  const value = (i: number) =>
    i < 0 ? 2 * curve[0] - curve[-i] : i > last ? 2 * curve[last] - curve[2 * last - i] : curve[i];
  return curve.map((_, i) => WEIGHTS.reduce((sum, weight, k) => sum + weight * value(i + k - 2), 0));
}

const tidy = (L: number) => Math.round(L * 1000) / 1000;
