import type { Cluster, Encoding, PictureFacts, Space } from '../shared/picture';
import { eigenSymmetric } from './eigen';

/** A lightness zone of a picture, ready for any number of targets. */
export interface SampledZone {
  /** Mean CIELAB of the file. */
  L: number;
  a: number;
  b: number;
  /** Share of the picture's area. */
  weight: number;
  clusters: SampledCluster[];
}

export interface SampledCluster {
  /** Share of the zone. */
  weight: number;
  mean: number[];
  /**
   * Points of equal weight with the cluster's mean and covariance: their mean through a curved function is right to
   * second order (unscented transform). The mean alone where nothing scatters.
   */
  points: number[][];
}

/** What a forecast needs of a picture, or of stated values. */
export interface SampledPicture {
  space: Space;
  zones: SampledZone[];
  /** True for a picture without any colour, which a print house can take for a grey one. */
  neutral: boolean;
  /** Share of the area per L* step of 1 (0-100) of the file; null for stated values. */
  histogram: readonly number[] | null;
  /** True if the numbers of an RGB file are sRGB's, or nothing says otherwise. */
  plainRgb: boolean;
}

/** Encodings without any colour that are not inks already. */
const NEUTRAL: ReadonlySet<Encoding> = new Set(['rgb-neutral', 'single-channel', 'bilevel', 'lab-neutral']);

const prepared = new WeakMap<PictureFacts, SampledPicture>();

/** Null where there is nothing to forecast: unreadable, or no opaque pixel. */
export function samplesOf(facts: PictureFacts): SampledPicture | null {
  const known = prepared.get(facts);
  if (known) return known;
  if (facts.space === null || facts.zones.length === 0) return null;
  const picture: SampledPicture = {
    space: facts.space,
    neutral: NEUTRAL.has(facts.encoding),
    zones: facts.zones.map(zone => ({
      L: zone.L,
      a: zone.a,
      b: zone.b,
      weight: zone.weight,
      clusters: zone.clusters.map(sampledCluster),
    })),
    histogram: facts.tone?.histogram ?? null,
    plainRgb: facts.profile === null || /srgb/i.test(facts.profile.description),
  };
  prepared.set(facts, picture);
  return picture;
}

/** Below this a standard deviation changes nothing (a quarter of an 8-bit step). */
const LEAST_SD = 0.001;

function sampledCluster({ weight, mean, covariance }: Cluster): SampledCluster {
  const n = mean.length;
  const { values, vectors } = eigenSymmetric(covariance, n);
  const axes = values
    .map((value, i) => ({ sd: Math.sqrt(Math.max(0, value)), i }))
    .filter(x => x.sd > LEAST_SD);
  const points = axes.flatMap(({ sd, i }) =>
    [1, -1].map(sign => mean.map((m, j) => m + sign * sd * Math.sqrt(axes.length) * vectors[j * n + i])),
  );
  return { weight, mean: [...mean], points: points.length > 0 ? points : [[...mean]] };
}
