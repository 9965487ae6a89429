import type { Cluster, Zone } from '../../shared/picture';
import type { Cells } from '../pass/tally';
import { type LightnessZones, ZONES, zoneOf } from './lightness';
import { Moments } from './moments';

const MOST_CLUSTERS = 3;
/** More different values than this are a colour photograph's: its zones stay whole, which is all that it needs. */
const MOST_CELLS = 65536;
/**
 * Standard deviation of stored values (of their range of 1) across the zone's own tone from which a zone is worth
 * splitting: about one visible step of colour, or inks mixed in two ways.
 */
const WORTH_SPLITTING = 0.02;

/** How stored values are scaled for the facts: by what, and how far their range reaches. */
interface Unit {
  divisor: number;
  range: number;
}

const UNITS: Record<'bytes' | 'lab', Unit> = {
  bytes: { divisor: 255, range: 255 },
  lab: { divisor: 1, range: 100 },
};

/**
 * The zones with their stored values as up to three clusters: mean and covariance, which is all that a forecast needs.
 * A zone is split where its values scatter otherwise than along its own run from dark to light (left-over colour, two
 * kinds of separation). Grey, RGB and inks come out in 0-1, Lab in its own units.
 */
export function zonesOf(zones: LightnessZones, lab: Float32Array, cells: Cells, isLab: boolean): Zone[] {
  const unit = isLab ? UNITS.lab : UNITS.bytes;
  const { channels } = cells;
  const moments = new Moments(ZONES * MOST_CLUSTERS, channels + 1, unit.range / 2);
  const cluster = new Uint8Array(cells.length);
  gather(moments, cells, lab, cluster, null);
  const most = cells.length > MOST_CELLS ? 1 : MOST_CLUSTERS;
  for (let made = 1; made < most; made++) {
    const splits = Array.from({ length: ZONES }, (_, zone) => splitOf(moments, zone, made, unit));
    if (splits.every(split => split === null)) break;
    for (const [zone, split] of splits.entries())
      if (split) moments.reset(zone * MOST_CLUSTERS + split.cluster);
    divide(cells, lab, cluster, splits, made);
    gather(moments, cells, lab, cluster, { splits, made });
  }
  return zones.used.map(zone => ({
    L: zones.L[zone],
    a: zones.a[zone],
    b: zones.b[zone],
    weight: zones.weight[zone],
    clusters: clustersOf(moments, zone, channels, unit.divisor),
  }));
}

/** A plane through a cluster's mean. */
interface Split {
  cluster: number;
  axis: Float64Array;
  /** Place of the mean along the axis. */
  at: number;
}

/** Adds the cells to their clusters' moments; with `only`, those of clusters that were just split. */
function gather(
  moments: Moments,
  cells: Cells,
  lab: Float32Array,
  cluster: Uint8Array,
  only: { splits: (Split | null)[]; made: number } | null,
) {
  const { channels, values, count, length } = cells;
  const row = new Float64Array(channels + 1);
  for (let i = 0; i < length; i++) {
    const zone = zoneOf(lab[i * 3]);
    const split = only?.splits[zone];
    if (only && (!split || (cluster[i] !== only.made && cluster[i] !== split.cluster))) continue;
    for (let c = 0; c < channels; c++) row[c] = values[i * channels + c];
    row[channels] = lab[i * 3];
    moments.add(zone * MOST_CLUSTERS + cluster[i], row, count[i]);
  }
}

/** The zone's widest cluster cut through its mean, if that is worth it. */
function splitOf(moments: Moments, zone: number, made: number, { range }: Unit): Split | null {
  let best: Split | null = null;
  let most = 0;
  for (let cluster = 0; cluster < made; cluster++) {
    const group = zone * MOST_CLUSTERS + cluster;
    if (moments.weight(group) === 0) continue;
    const { axis, variance } = moments.acrossLast(group);
    const spread = variance * moments.weight(group);
    if (Math.sqrt(variance) < WORTH_SPLITTING * range || spread <= most) continue;
    most = spread;
    best = { cluster, axis, at: axis.reduce((sum, v, c) => sum + v * moments.mean(group, c), 0) };
  }
  return best;
}

/** Moves the cells beyond their cluster's plane to the cluster `made`. */
function divide(
  { channels, values, length }: Cells,
  lab: Float32Array,
  cluster: Uint8Array,
  splits: (Split | null)[],
  made: number,
) {
  for (let i = 0; i < length; i++) {
    const split = splits[zoneOf(lab[i * 3])];
    if (!split || cluster[i] !== split.cluster) continue;
    let at = 0;
    for (let c = 0; c < channels; c++) at += split.axis[c] * values[i * channels + c];
    if (at > split.at) cluster[i] = made;
  }
}

function clustersOf(moments: Moments, zone: number, channels: number, divisor: number): Cluster[] {
  const groups = Array.from({ length: MOST_CLUSTERS }, (_, i) => zone * MOST_CLUSTERS + i);
  const total = groups.reduce((sum, group) => sum + moments.weight(group), 0);
  return groups
    .filter(group => moments.weight(group) > 0)
    .map(group => ({
      weight: moments.weight(group) / total,
      mean: Array.from({ length: channels }, (_, c) => moments.mean(group, c) / divisor),
      covariance: Array.from(
        { length: channels * channels },
        (_, i) => moments.covariance(group, Math.floor(i / channels), i % channels) / divisor ** 2,
      ),
    }));
}
