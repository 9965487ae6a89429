// no-unit-test: shared by the tests of this folder

import { srgbToLab } from '../../src/colour/srgb';
import type { Cluster, PictureFacts, Zone } from '../../src/shared/picture';

const single = (mean: number[]): Cluster => ({
  weight: 1,
  mean,
  covariance: mean.flatMap((_, i) => mean.map((_, j) => (i === j ? 0 : 0))),
});

/** Facts of an RGB picture of one mid-grey, with what a test changes of them. */
export function pictureFacts(change: Partial<PictureFacts>): PictureFacts {
  return {
    page: 1,
    sha256: '',
    format: 'tiff',
    width: 100,
    height: 100,
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
    levels: [],
    chroma: null,
    ink: null,
    tone: null,
    zones: [{ L: 53.4, a: 0, b: 0, weight: 1, clusters: [single([0.5, 0.5, 0.5])] }],
    remarks: [],
    unreadable: null,
    ...change,
  };
}

/** A picture of greys from near black to near white, R = G = B, all of the same area. */
export function greyScale(count = 12): PictureFacts {
  const zones = Array.from({ length: count }, (_, i): Zone => {
    const v = (i + 0.5) / count;
    const [L] = srgbToLab([v, v, v], new Float64Array(3));
    return { L, a: 0, b: 0, weight: 1 / count, clusters: [single([v, v, v])] };
  });
  const histogram = Array(101).fill(0);
  for (const zone of zones) histogram[Math.round(zone.L)] += zone.weight;
  return pictureFacts({ zones, tone: { darkest: zones[0].L, lightest: zones[count - 1].L, histogram } });
}

/** The same greys as black ink alone, or as equal coloured inks. */
export function inkScale(
  inks: (v: number) => number[],
  encoding: PictureFacts['encoding'],
  count = 12,
): PictureFacts {
  const grey = greyScale(count);
  return {
    ...grey,
    space: 'cmyk',
    channels: 4,
    encoding,
    zones: grey.zones.map((zone, i) => ({ ...zone, clusters: [single(inks(1 - (i + 0.5) / count))] })),
  };
}
