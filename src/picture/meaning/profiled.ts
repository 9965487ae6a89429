import type { IccProfile } from '../../colour/icc';
import { D50, labToXyz } from '../../colour/lab';
import { AdditiveRgb } from './additive';
import { GreyCurve } from './curve';
import { LabGrid } from './grid';
import type { Meaning } from './types';

const RGB_SIDE = 33;
const INK_SIDE = 17;
/** Ink is seen most where there is little of it. */
const INK_BEND = 0.8;
/** Samples of a tone curve: four an 8-bit step. */
const CURVE = 255 * 4 + 1;
/** Largest difference (a*, b*, L*) from adding up the channels that still is rounding inside the profile. */
const ADDITIVE = 0.05;

/** A profile's own Lab (relative colorimetric), tabled so that millions of values cost little. `space`: the picture's. */
export function profiled(profile: IccProfile, space: 'grey' | 'rgb' | 'cmyk'): Meaning {
  if (space === 'grey') return greyOf(profile);
  if (space === 'rgb') return additive(profile) ?? new LabGrid(3, RGB_SIDE, 1, through(profile));
  return new LabGrid(4, INK_SIDE, INK_BEND, through(profile));
}

const through = (profile: IccProfile) => (values: Float64Array, out: Float64Array) =>
  out.set(profile.transformToLab('relative', values));

/** Lightness of a grey profile, or of the grey axis of an RGB one. */
function greyOf(profile: IccProfile): Meaning {
  const { channels } = profile;
  const lab = profile.transformToLab(
    'relative',
    Float64Array.from({ length: CURVE * channels }, (_, i) => Math.floor(i / channels) / (CURVE - 1)),
  );
  return new GreyCurve(between(Float64Array.from({ length: CURVE }, (_, i) => lab[i * 3])));
}

/** Curves and matrix of a profile whose channels add up in light; null where they do not. */
function additive(profile: IccProfile): AdditiveRgb | null {
  const light = [0, 1, 2].map(channel => {
    const values = new Float64Array(CURVE * 3);
    for (let i = 0; i < CURVE; i++) values[i * 3 + channel] = i / (CURVE - 1);
    return relativeXyz(profile.transformToLab('relative', values));
  });
  const full = light.map(xyz => xyz.subarray((CURVE - 1) * 3));
  const curves = light.map((xyz, channel) =>
    between(Float64Array.from({ length: CURVE }, (_, i) => xyz[i * 3 + 1] / full[channel][1])),
  );
  if (full.some(xyz => !(xyz[1] > 0))) return null;
  const matrix = [0, 1, 2].flatMap(row => full.map(xyz => xyz[row]));
  const sum = new AdditiveRgb(curves, matrix);
  return agree(sum, profile) ? sum : null;
}

/** Compares on the corners, centres and greys of a coarse grid. */
function agree(sum: AdditiveRgb, profile: IccProfile): boolean {
  const side = 6;
  const bytes = Float32Array.from(
    { length: side ** 3 * 3 },
    (_, i) => 51 * (Math.floor(Math.floor(i / 3) / side ** (i % 3)) % side),
  );
  const lab = new Float32Array(bytes.length);
  sum.lab(bytes, side ** 3, lab);
  const own = profile.transformToLab(
    'relative',
    Float64Array.from(bytes, v => v / 255),
  );
  return lab.every((value, i) => Math.abs(value - own[i]) < ADDITIVE);
}

/** Lab -> XYZ over white, in place of a copy. */
function relativeXyz(lab: Float64Array): Float64Array {
  const xyz = Float64Array.from(lab);
  for (let i = 0; i < xyz.length; i += 3) {
    const row = xyz.subarray(i, i + 3);
    labToXyz(row, row);
    for (let c = 0; c < 3; c++) row[c] /= D50[c];
  }
  return xyz;
}

/** Reads a table of 0-1 between its entries. */
function between(table: Float64Array): (at: number) => number {
  const last = table.length - 1;
  return at => {
    const i = Math.min(last - 1, Math.floor(at * last));
    return table[i] + (at * last - i) * (table[i + 1] - table[i]);
  };
}
