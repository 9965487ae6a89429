import { D50, labToXyz, lightness } from '../../colour/lab';
import { XYZ_TO_SRGB } from '../../colour/srgb';
import { srgbCurve } from '../../colour/tone-curves';
import type { AdditiveRgb } from '../../picture/meaning/additive';
import type { GreyMethod } from '../../shared/remedy';
import { RemedyError } from '../remedy-error';

/** Shares of red, green and blue in luma (ITU-R BT.709, item 3.2 of the signal format). */
const LUMA = [0.2126, 0.7152, 0.0722] as const;

/** L* of a colour by a method, from its CIELAB: weights are of sRGB's channels, whatever the colour was stored as. */
export function greyOfLab(method: GreyMethod): (L: number, a: number, b: number) => number {
  if (method.kind === 'lightness') return L => L;
  const weights = method.kind === 'mix' ? mixWeights(method) : LUMA;
  const point = new Float64Array(3);
  const encoded = method.kind === 'luma';
  return (L, a, b) => {
    point[0] = L;
    point[1] = a;
    point[2] = b;
    labToXyz(point, point);
    let sum = 0;
    for (let c = 0; c < 3; c++) {
      const row = c * 3;
      const light =
        XYZ_TO_SRGB[row] * point[0] + XYZ_TO_SRGB[row + 1] * point[1] + XYZ_TO_SRGB[row + 2] * point[2];
      sum += weights[c] * (encoded ? srgbCurve.encode(light) : light);
    }
    sum = Math.min(1, Math.max(0, sum));
    return lightness(100 * (encoded ? srgbCurve.decode(sum) : sum));
  };
}

/** What a stored value (0-1) of each channel adds to the grey, and whether that sum is light or a stored value. */
export interface ChannelShares {
  share: ((stored: number) => number)[];
  sumIs: 'light' | 'stored';
}

/** The same for channels that add up in light, without the way over CIELAB. */
export function channelShares(method: GreyMethod, { light, matrix }: AdditiveRgb): ChannelShares {
  if (method.kind === 'luma')
    return { share: LUMA.map(weight => stored => weight * stored), sumIs: 'stored' };
  const weights =
    method.kind === 'lightness'
      ? [matrix[3], matrix[4], matrix[5]]
      : inOwnChannels(mixWeights(method), matrix);
  return { share: light.map((curve, c) => stored => weights[c] * curve(stored)), sumIs: 'light' };
}

/** Weights of sRGB's linear channels as weights of the channels whose X/Xw, Y/Yw, Z/Zw are `matrix`. */
function inOwnChannels(weights: readonly number[], matrix: readonly number[]): number[] {
  return [0, 1, 2].map(own => {
    let sum = 0;
    for (let row = 0; row < 3; row++)
      for (let c = 0; c < 3; c++)
        sum += weights[c] * XYZ_TO_SRGB[c * 3 + row] * D50[row] * matrix[row * 3 + own];
    return sum;
  });
}

/** Weights that add up to 1, so that greys keep their lightness. @throws RemedyError where they cannot */
function mixWeights({ red, green, blue }: GreyMethod & { kind: 'mix' }): number[] {
  const sum = red + green + blue;
  if (!(sum > 0) || !Number.isFinite(sum))
    throw new RemedyError(
      `White would not stay white: the weights of red, green and blue (${red}, ${green}, ${blue}) add up to ${sum}. Choose weights whose sum is above 0.`,
    );
  return [red / sum, green / sum, blue / sum];
}
