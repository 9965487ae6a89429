import { UnreadableError } from '../../../src/picture/header/unreadable';
import { unreadableFacts } from '../../../src/picture/unreadable-facts';
import type { PictureFacts, Unreadable } from '../../../src/shared/picture';

/** Facts of a flat grey picture: R = G = B. */
export function greyFacts(sha256: string, change: Partial<PictureFacts> = {}): PictureFacts {
  const histogram = new Array(101).fill(0);
  histogram[54] = 1;
  return {
    page: 1,
    sha256,
    format: 'png',
    width: 60,
    height: 40,
    channels: 3,
    bits: 8,
    alpha: false,
    palette: false,
    space: 'rgb',
    encoding: 'rgb-neutral',
    profile: null,
    assumed: 'sRGB',
    ppi: null,
    orientation: 1,
    remedied: null,
    levels: [0, 1, 2].map(() => ({ min: 128, max: 128, mean: 128 })),
    chroma: {
      max: 0,
      mean: 0,
      share: 0,
      hue: null,
      zones: [{ L: 53.6, weight: 1, a: 0, b: 0, residual: 0 }],
      places: [],
      maxBlock: 0,
      maxPixel: 0,
    },
    ink: null,
    tone: { darkest: 53.6, lightest: 53.6, histogram },
    zones: [
      {
        L: 53.6,
        a: 0,
        b: 0,
        weight: 1,
        clusters: [{ weight: 1, mean: [0.502, 0.502, 0.502], covariance: new Array(9).fill(0) }],
      },
    ],
    remarks: [],
    unreadable: null,
    ...change,
  };
}

export const brokenFacts = (reason: Unreadable['reason']): PictureFacts =>
  unreadableFacts(new UnreadableError(reason, `It is ${reason}.`), '');
