import type { Cluster, Zone } from '../../shared/picture';
import type { Cells } from '../pass/tally';
import { type LightnessZones, ZONES, zoneOf } from './lightness';
import { Moments } from './moments';

const MOST_CLUSTERS = 3;
/**
 * Standard deviation of stored values (0-1) across the zone's own tone from which a zone is worth splitting: about one
 * visible step of colour, or inks mixed in two ways.
 */
const WORTH_SPLITTING = 0.02;

/**
 * The zones with their stored values as up to three clusters: mean and covariance, which is all that a forecast needs.
 * A zone is split where its values scatter otherwise than along its own run from dark to light (left-over colour, two
 * kinds of separation).
 * @param unit what the values are divided by: 255, or 1 for Lab
 */
export function zonesOf(zones: LightnessZones, lab: Float32Array, cells: Cells, unit: number): Zone[] {
  const { channels } = cells;
  const group = new Uint8Array(cells.length);
  const groups = Array.from({ length: ZONES * MOST_CLUSTERS }, () => new Moments(channels));
  gather(groups, group, () => true);
  for (let made = 1; made < MOST_CLUSTERS; made++) {
    const splits = Array.from({ length: ZONES }, (_, zone) => splitOf(zone, made));
    if (splits.every(split => split === null)) break;
    for (let i = 0; i < cells.length; i++) {
      const split = splits[zoneOf(lab[i * 3])];
      if (split && group[i] === split.group && across(split, i) > 0) group[i] = made;
    }
    for (const [zone, split] of splits.entries())
      if (split) for (const g of [split.group, made]) groups[zone * MOST_CLUSTERS + g].reset();
    gather(groups, group, (zone, g) => splits[zone] !== null && (g === made || g === splits[zone]!.group));
  }
  return zones.used.map(zone => ({
    L: zones.L[zone],
    a: zones.a[zone],
    b: zones.b[zone],
    weight: zones.weight[zone],
    clusters: clustersOf(groups.slice(zone * MOST_CLUSTERS, (zone + 1) * MOST_CLUSTERS), unit),
  }));

  function gather(into: Moments[], of: Uint8Array, wanted: (zone: number, group: number) => boolean) {
    const take = Array.from({ length: ZONES * MOST_CLUSTERS }, (_, i) =>
      wanted(Math.floor(i / MOST_CLUSTERS), i % MOST_CLUSTERS),
    );
    for (let i = 0; i < cells.length; i++) {
      const at = zoneOf(lab[i * 3]) * MOST_CLUSTERS + of[i];
      if (take[at]) into[at].add(cells.values, i * channels, lab[i * 3], cells.count[i]);
    }
  }

  /** The widest of the zone's groups and the plane through its mean, if it is worth splitting. */
  function splitOf(zone: number, made: number): Split | null {
    let best: Split | null = null;
    let most = 0;
    for (let g = 0; g < made; g++) {
      const moments = groups[zone * MOST_CLUSTERS + g];
      if (moments.weight === 0) continue;
      const { axis, variance } = moments.acrossTone();
      const width = Math.sqrt(variance) / unit;
      if (width < (unit === 1 ? 100 : 1) * WORTH_SPLITTING || variance * moments.weight <= most) continue;
      most = variance * moments.weight;
      best = { group: g, axis, mean: moments.mean() };
    }
    return best;
  }

  function across({ axis, mean }: Split, i: number): number {
    let sum = 0;
    for (let c = 0; c < channels; c++) sum += axis[c] * (cells.values[i * channels + c] - mean[c]);
    return sum;
  }
}

interface Split {
  group: number;
  axis: Float64Array;
  mean: Float64Array;
}

function clustersOf(groups: Moments[], unit: number): Cluster[] {
  const total = groups.reduce((sum, group) => sum + group.weight, 0);
  return groups
    .filter(group => group.weight > 0)
    .map(group => ({
      weight: group.weight / total,
      mean: [...group.mean()].map(v => v / unit),
      covariance: [...group.covariance()].map(v => v / (unit * unit)),
    }));
}
