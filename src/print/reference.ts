import type { PrintModel } from './model';
import type { DeviceCluster } from './response';

/** The process's reference encoding: black alone on ink presses, R = G = B on photographic ones. */
export interface Reference {
  /** Device values of the reference that prints lightness L; the darkest one where it cannot. */
  device(L: number): number[];
  /** L* of the darkest reference grey. */
  black: number;
}

const STEPS = 64;

/** Made from the model's own ramp under D50. */
export function referenceOf(model: PrintModel): Reference {
  const lab = new Float64Array(3);
  const device = (darkness: number) =>
    model.dimensions === 4 ? [0, 0, 0, darkness] : Array(3).fill(1 - darkness);
  const ramp = Array.from({ length: STEPS + 1 }, (_, i) => {
    model.lab(device(i / STEPS), null, lab);
    return lab[0];
  });
  return {
    black: ramp[STEPS],
    device(L) {
      let i = 0;
      while (i < STEPS - 1 && ramp[i + 1] > L) i++;
      const t = ramp[i] === ramp[i + 1] ? 0 : (ramp[i] - L) / (ramp[i] - ramp[i + 1]);
      return device((i + Math.min(1, Math.max(0, t))) / STEPS);
    },
  };
}

/**
 * The same zone in the reference encoding: clusters that are in it already stay as they are, so that such a picture
 * differs from it by exactly nothing; any other becomes the reference grey of the zone's print lightness `L`.
 */
export function asReference(
  reference: Reference,
  dimensions: 3 | 4,
  clusters: readonly DeviceCluster[],
  L: number,
): DeviceCluster[] {
  const is = dimensions === 4 ? onlyBlack : equalRgb;
  return clusters.map(cluster => {
    if (cluster.passed.a === 0 && cluster.passed.b === 0 && cluster.points.every(is)) return cluster;
    const mean = reference.device(L);
    return { ...cluster, mean, points: [mean], passed: { a: 0, b: 0 } };
  });
}

const onlyBlack = (inks: ArrayLike<number>) => inks[0] === 0 && inks[1] === 0 && inks[2] === 0;
/** Less than any stored step apart. */
const equalRgb = (rgb: ArrayLike<number>) =>
  Math.abs(rgb[0] - rgb[1]) < 1e-5 && Math.abs(rgb[1] - rgb[2]) < 1e-5;
