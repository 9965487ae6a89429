import { D50, lightness } from '../../colour/lab';
import { SRGB_TO_XYZ } from '../../colour/srgb';
import { gammaCurve, srgbCurve } from '../../colour/tone-curves';
import type { Space } from '../../shared/picture';
import type { Header } from '../types';
import { AdditiveRgb } from './additive';
import { GreyCurve } from './curve';
import { pressMeaning } from './press';
import type { Meaning } from './types';

/** A stated exponent this close to 2.2 means sRGB: writers of PNG round it so. */
const USUAL = 0.05;

const SRGB_MATRIX = [...SRGB_TO_XYZ].map((value, i) => value / D50[Math.floor(i / 3)]);

/** The meaning of numbers that no profile explains, and what that assumes. Tables are made on first use, then kept. */
export function untagged(header: Pick<Header, 'space' | 'gamma'>): Untagged {
  const { space } = header;
  const gamma = statedGamma(header);
  const key = `${space} ${gamma}`;
  let found = known.get(key);
  if (!found) {
    found = make(space, gamma);
    if (known.size < MOST_KNOWN) known.set(key, found);
  }
  return found;
}

interface Untagged {
  meaning: Meaning;
  assumed: string | null;
}

const known = new Map<string, Untagged>();
/** Exponents that files state: anything can stand in one, so not all are kept. */
const MOST_KNOWN = 16;

function make(space: Space, gamma: number | null): Untagged {
  const curve = gamma === null ? srgbCurve : gammaCurve(gamma);
  const words = gamma === null ? 'the tone curve of sRGB' : `the exponent ${gamma} that the file states`;
  switch (space) {
    case 'grey':
      return {
        meaning: new GreyCurve(v => lightness(100 * curve.decode(v))),
        assumed: `No profile: the greys were read with ${words}.`,
      };
    case 'rgb':
      return {
        meaning: new AdditiveRgb([curve.decode, curve.decode, curve.decode], SRGB_MATRIX),
        assumed:
          gamma === null
            ? 'No profile: the numbers were read as sRGB.'
            : `No profile: the numbers were read as sRGB, but with ${words}.`,
      };
    case 'cmyk':
      return {
        meaning: pressMeaning(),
        assumed:
          'No profile: the inks were read as on grade 1 coated paper (ANSI/CGATS TR 006), relative to the paper.',
      };
    case 'lab':
      return { meaning: AS_IT_IS, assumed: null };
  }
}

const AS_IT_IS: Meaning = { lab: (values, n, out) => out.set(values.subarray(0, n * 3)) };

/** The stated exponent, where it is not the usual one. */
function statedGamma({ space, gamma }: Pick<Header, 'space' | 'gamma'>): number | null {
  if (!gamma || (space !== 'grey' && space !== 'rgb') || Math.abs(1 / gamma - 2.2) < USUAL) return null;
  return Math.round(100 / gamma) / 100;
}
