import type { PictureFacts } from '../../shared/picture';
import type { Cells } from '../pass/tally';

/** Lightness zones of a picture: equal steps of L* from 0 to 100. */
export const ZONES = 16;

export function zoneOf(L: number): number {
  const zone = (L * (ZONES / 100)) | 0;
  return zone < 0 ? 0 : zone >= ZONES ? ZONES - 1 : zone;
}

export interface LightnessZones {
  /** Zones that hold any pixel, from dark to light. */
  used: number[];
  /** By zone: share of the pixels; mean L*, a*, b*. */
  weight: Float64Array;
  L: Float64Array;
  a: Float64Array;
  b: Float64Array;
}

export function lightnessZones(lab: Float32Array, cells: Cells): LightnessZones {
  const [weight, L, a, b] = Array.from({ length: 4 }, () => new Float64Array(ZONES));
  let total = 0;
  for (let i = 0; i < cells.length; i++) {
    const zone = zoneOf(lab[i * 3]);
    const n = cells.count[i];
    total += n;
    weight[zone] += n;
    L[zone] += n * lab[i * 3];
    a[zone] += n * lab[i * 3 + 1];
    b[zone] += n * lab[i * 3 + 2];
  }
  const used = [...weight.keys()].filter(zone => weight[zone] > 0);
  for (const zone of used) {
    for (const sums of [L, a, b]) sums[zone] /= weight[zone];
    weight[zone] /= total;
  }
  return { used, weight, L, a, b };
}

const BINS = 101;

/** Darkest and lightest pixel, and the share of the pixels at each whole L*; null where no pixel counts. */
export function toneOf(lab: Float32Array, cells: Cells): PictureFacts['tone'] {
  if (cells.length === 0) return null;
  const histogram = new Array<number>(BINS).fill(0);
  let [darkest, lightest, total] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let i = 0; i < cells.length; i++) {
    const L = lab[i * 3];
    darkest = Math.min(darkest, L);
    lightest = Math.max(lightest, L);
    histogram[Math.min(BINS - 1, Math.max(0, Math.round(L)))] += cells.count[i];
    total += cells.count[i];
  }
  // black by a table may be a rounding below nothing
  return { darkest: Math.max(0, darkest), lightest, histogram: histogram.map(n => n / total) };
}
