import { lightness, luminance } from '../colour/lab';
import { labToSrgb } from '../colour/srgb';
import type { AB } from '../shared/forecast';
import type { Space } from '../shared/picture';
import { relativeLabOfInks } from './inks/file-colour';
import { colouredShare } from './inks/model';
import { inksOnAxis } from './inks/separation';
import type { Separation } from './press';
import type { Reference } from './reference';
import type { DeviceCluster } from './response';
import type { Handling } from './routes';
import type { SampledPicture, SampledZone } from './samples';

/** What a conversion at the print house needs to know of the press. */
export interface Destination {
  /** L* of the paper. */
  white: number;
  reference: Reference;
  /** What pictures are separated for; asked for on ink presses only. */
  separation: Separation;
}

const NONE: AB = { a: 0, b: 0 };

const rgbOfLab = (L: number, a: number, b: number): Float64Array => labToSrgb([L, a, b], new Float64Array(3));

/**
 * How far press profiles differ when inks are turned into R, G, B, one SD: for black alone the spread of black inks
 * over published conditions, for coloured greys what a foreign profile adds to a press's own (both from this project's
 * collection of priors).
 */
const PROFILE_SPREAD = { black: { a: 0.5, b: 0.8 }, coloured: { a: 1.1, b: 1.3 } };

/** Device values that reach the press for one zone of the picture. */
export function handled(
  handling: Handling,
  picture: SampledPicture,
  zone: SampledZone,
  to: Destination,
): DeviceCluster[] {
  switch (handling.kind) {
    case 'kept':
      return keepsOwnNumbers(picture)
        ? mapped(zone, point => point)
        : [single(rgbOfLab(zone.L, zone.a, zone.b))];
    case 'grey-to-black':
      return mapped(zone, ([grey]) => [0, 0, 0, 1 - grey]);
    case 'lightness-to-black': {
      const { L } = colourInFile(picture.space, zone);
      return [single(to.reference.device(printLightness(L, to.white, to.reference.black)))];
    }
    case 'separated': {
      const { L, a, b } = colourInFile(picture.space, zone);
      const { white } = to.separation;
      const axis = to.separation.axis(handling.generation);
      const inks = new Float64Array(4);
      inksOnAxis(axis, printLightness(L, white, axis.black), inks);
      return [{ ...single(inks), passed: { a, b } }];
    }
    case 'to-rgb':
      return picture.space === 'cmyk' ? inksToRgb(zone) : [single(rgbOfLab(zone.L, zone.a, zone.b))];
  }
}

const keepsOwnNumbers = (picture: SampledPicture) => picture.space !== 'rgb' || picture.plainRgb;

const single = (mean: ArrayLike<number>): DeviceCluster => ({
  weight: 1,
  mean,
  points: [mean],
  passed: NONE,
  conversion: NONE,
});

function mapped(zone: SampledZone, map: (point: number[]) => ArrayLike<number>): DeviceCluster[] {
  const inRange = (point: number[]) => Array.from(map(point), value => Math.min(1, Math.max(0, value)));
  return zone.clusters.map(({ weight, mean, points }) => ({
    weight,
    mean: inRange(mean),
    points: points.map(inRange),
    passed: NONE,
    conversion: NONE,
  }));
}

/**
 * Print lightness of a file's lightness (0-100, relative to its white) by relative colorimetry with black-point
 * compensation, the usual way of conversion programs: luminance runs linearly from the press's black to its paper.
 */
export function printLightness(L: number, white: number, black: number): number {
  const paper = luminance(white);
  const darkest = luminance(black);
  return lightness(darkest + (luminance(L) / 100) * (paper - darkest));
}

/** Colour that the print house's program reads in the file, relative to the file's white. */
function colourInFile(space: Space, zone: SampledZone): { L: number; a: number; b: number } {
  if (space !== 'cmyk') return zone;
  const sum = { L: 0, a: 0, b: 0 };
  for (const { weight, mean } of zone.clusters) {
    const [L, a, b] = relativeLabOfInks(mean);
    sum.L += weight * L;
    sum.a += weight * a;
    sum.b += weight * b;
  }
  return sum;
}

function inksToRgb(zone: SampledZone): DeviceCluster[] {
  const convert = (inks: number[]) => {
    const [L, a, b] = relativeLabOfInks(inks);
    return rgbOfLab(L, a, b);
  };
  return mapped(zone, convert).map((cluster, i) => {
    const share = colouredShare(zone.clusters[i].mean);
    const mix = (from: number, to: number) => from + share * (to - from);
    return {
      ...cluster,
      conversion: {
        a: mix(PROFILE_SPREAD.black.a, PROFILE_SPREAD.coloured.a),
        b: mix(PROFILE_SPREAD.black.b, PROFILE_SPREAD.coloured.b),
      },
    };
  });
}
