import { labToSrgb } from '../colour/srgb';
import type { Forecast } from '../shared/forecast';
import type { PictureFacts, Space } from '../shared/picture';
import type { GreyEncoding, Target } from '../shared/target';
import { forecast } from './forecast';
import { printLightness } from './handling';
import { inksOnAxis, usualGeneration } from './inks/separation';
import { type Press, pressOf } from './press';
import { type SampledPicture, samplesOf } from './samples';
import { defaultTarget } from './target';

/** Encodings that any grey picture can be turned into; the others are accidents or another intent. */
export const greyEncodings = [
  'rgb-neutral',
  'single-channel',
  'black-only',
  'four-channel',
] as const satisfies GreyEncoding[];
export type { GreyEncoding };

/** How an encoding is stored. */
export const spaceOf: Record<GreyEncoding, Space> = {
  'rgb-neutral': 'rgb',
  'single-channel': 'grey',
  'black-only': 'cmyk',
  'four-channel': 'cmyk',
};

/**
 * How the picture would print on the target if it were stored in another encoding: same lightness everywhere, no
 * colour, no noise. Inks are those of a sound conversion for this very press (a usual one, if it takes none): black alone of the same lightness, or
 * the press's own separation with a medium amount of black. Null where there is nothing to forecast.
 */
export function forecastAs(encoding: GreyEncoding, facts: PictureFacts, target: Target): Forecast | null {
  const picture = samplesOf(facts);
  if (!picture) return null;
  return forecast(restated(encoding, picture, pressOf(target)), target);
}

/** Greys of the given lightness in the file, stored in an encoding as a sound conversion for this press stores them. */
export function restated(
  encoding: GreyEncoding,
  {
    zones,
    histogram,
  }: { zones: readonly { L: number; weight: number }[]; histogram: SampledPicture['histogram'] },
  press: Press,
): SampledPicture {
  return {
    space: spaceOf[encoding],
    neutral: spaceOf[encoding] !== 'cmyk',
    plainRgb: true,
    histogram,
    zones: zones.map(({ L, weight }) => {
      const mean = stored(encoding, L, press);
      return { L, a: 0, b: 0, weight, clusters: [{ weight: 1, mean, points: [mean] }] };
    }),
  };
}

/**
 * Stored values of a grey of the file's lightness L. For a press that takes no inks, inks are those of a usual press:
 * the one by which conversion programs read them again.
 */
function stored(encoding: GreyEncoding, L: number, destination: Press): number[] {
  const press = destination.daylight.dimensions === 4 ? destination : pressOf(defaultTarget('offset-coated'));
  const white = press.paper.white[0];
  switch (encoding) {
    case 'rgb-neutral':
      return Array(3).fill(greyValue(L));
    case 'single-channel':
      return [greyValue(L)];
    case 'black-only':
      return press.reference.device(printLightness(L, white, press.reference.black));
    case 'four-channel': {
      const axis = press.axis(usualGeneration(press.generations));
      const inks = new Float64Array(4);
      inksOnAxis(axis, printLightness(L, white, axis.black), inks);
      return [...inks];
    }
  }
}

const greyValue = (L: number) => labToSrgb([L, 0, 0], new Float64Array(3))[1];
