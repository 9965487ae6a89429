import type { AB } from '../shared/forecast';
import type { GreyAim } from './aim';
import type { PrintModel } from './model';
import { deviationOf, type Moves } from './scatter';

/** Part of a zone as the press receives it. */
export interface DeviceCluster {
  /** Share of the zone, 0-1. */
  weight: number;
  /** Device values of the model: inks or R, G, B, 0-1. */
  mean: ArrayLike<number>;
  /** Points of equal weight that stand for the spread of values; the mean alone where there is none. */
  points: readonly ArrayLike<number>[];
  /** Chroma that a conversion at the print house passes on from the file, on top of what the device values print. */
  passed: AB;
  /** Uncertainty of such a conversion, one SD: every house has its own. */
  conversion: AB;
}

/** How one zone prints under one route: its mean colour, and how far each cause of drift moves it. */
export interface ZoneResponse {
  Lprint: number;
  /** Absolute CIELAB. */
  a: number;
  b: number;
  aimA: number;
  aimB: number;
  moves: Moves;
}

/** Colour of a zone alone, where no spread is asked for (the reference encoding, D50 beside another light). */
export interface ZoneColour {
  L: number;
  a: number;
  b: number;
}

/** Mean colour over the points of all clusters. */
export function colourOf(model: PrintModel, clusters: readonly DeviceCluster[]): ZoneColour {
  const lab = new Float64Array(3);
  const mean = { L: 0, a: 0, b: 0 };
  for (const { weight, points, passed } of clusters)
    for (const point of points) {
      const w = weight / points.length;
      model.lab(point, null, lab);
      mean.L += w * lab[0];
      mean.a += w * (lab[1] + passed.a);
      mean.b += w * (lab[2] + passed.b);
    }
  return mean;
}

/** `drift`: what the causes move where that is known from the same zone under D50; else it is worked out. */
export function respond(
  model: PrintModel,
  aim: GreyAim,
  clusters: readonly DeviceCluster[],
  drift = driftOf(model, aim, clusters),
): ZoneResponse {
  const { L, a, b } = colourOf(model, clusters);
  const shared = { a: 0, b: 0 };
  for (const { weight, mean, conversion } of clusters) {
    const data = model.dataSpread(L, mean);
    shared.a += weight * Math.hypot(data.a, conversion.a);
    shared.b += weight * Math.hypot(data.b, conversion.b);
  }
  return { Lprint: L, a, b, aimA: aim.a(L), aimB: aim.b(L), moves: { drift, shared } };
}

/** The model's own Jacobian, by central differences of one SD at the clusters' means. */
function driftOf(model: PrintModel, aim: GreyAim, clusters: readonly DeviceCluster[]): Float64Array {
  const { drifts } = model;
  const drift = new Float64Array(drifts.length * 2);
  const lab = new Float64Array(3);
  const moved = new Float64Array(drifts.length);
  for (const { weight, mean } of model.dimensions === 3 ? [oneOf(clusters)] : clusters)
    for (let i = 0; i < drifts.length; i++) {
      const sd = deviationOf(drifts[i]);
      for (const sign of [1, -1]) {
        moved[i] = sign * sd;
        model.lab(mean, moved, lab);
        drift[i * 2] += (sign * weight * (lab[1] - aim.a(lab[0]))) / 2;
        drift[i * 2 + 1] += (sign * weight * (lab[2] - aim.b(lab[0]))) / 2;
      }
      moved[i] = 0;
    }
  return drift;
}

/**
 * R, G, B of one lightness lie close together, and drift moves them alike: one point stands for all. Inks of one
 * lightness may be black alone or three colours.
 */
export function oneOf(clusters: readonly DeviceCluster[]): DeviceCluster {
  const whole = clusters.reduce((sum, { weight }) => sum + weight, 0);
  const mean = Array.from(
    clusters[0].mean,
    (_, i) => clusters.reduce((sum, cluster) => sum + cluster.weight * cluster.mean[i], 0) / whole,
  );
  const passed = { a: 0, b: 0 };
  for (const cluster of clusters) {
    passed.a += cluster.weight * cluster.passed.a;
    passed.b += cluster.weight * cluster.passed.b;
  }
  return { weight: whole, mean, points: [mean], passed, conversion: clusters[0].conversion };
}
