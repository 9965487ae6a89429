import { D50, lightness } from '../../colour/lab';
import { SRGB_TO_XYZ } from '../../colour/srgb';
import { gammaCurve, srgbCurve, type ToneCurve } from '../../colour/tone-curves';
import type { Header } from '../types';
import { AdditiveRgb } from './additive';
import { GreyCurve } from './curve';
import { pressMeaning } from './press';
import type { Meaning } from './types';

/** A stated exponent this close to 2.2 means sRGB: writers of PNG round it so. */
const USUAL = 0.05;

const SRGB_MATRIX = [...SRGB_TO_XYZ].map((value, i) => value / D50[Math.floor(i / 3)]);

/** The meaning of numbers that no profile explains, and what that assumes. */
export function untagged({ space, gamma }: Pick<Header, 'space' | 'gamma'>): {
  meaning: Meaning;
  assumed: string | null;
} {
  switch (space) {
    case 'grey': {
      const { curve, words } = curveOf(gamma);
      return {
        meaning: new GreyCurve(v => lightness(100 * curve.decode(v))),
        assumed: `No profile: the greys were read with ${words}.`,
      };
    }
    case 'rgb': {
      const { curve, words } = curveOf(gamma);
      return {
        meaning: new AdditiveRgb([curve.decode, curve.decode, curve.decode], SRGB_MATRIX),
        assumed:
          words === SRGB_WORDS
            ? 'No profile: the numbers were read as sRGB.'
            : `No profile: the numbers were read as sRGB's primaries with ${words}.`,
      };
    }
    case 'cmyk':
      return {
        meaning: pressMeaning(),
        assumed:
          'No profile: the inks were read as on grade 1 coated paper (ANSI/CGATS TR 006), relative to the paper.',
      };
    case 'lab':
      return { meaning: { lab: (values, n, out) => out.set(values.subarray(0, n * 3)) }, assumed: null };
  }
}

const SRGB_WORDS = 'the tone curve of sRGB';

function curveOf(gamma: number | null | undefined): { curve: ToneCurve; words: string } {
  if (!gamma || Math.abs(1 / gamma - 2.2) < USUAL) return { curve: srgbCurve, words: SRGB_WORDS };
  const exponent = Math.round(100 / gamma) / 100;
  return { curve: gammaCurve(exponent), words: `the exponent ${exponent} that the file states` };
}
