import type { Field, FieldMaker, Fraction } from './fields';

/** Pixels per unit as exact fractions; of the unit `none` only their ratio means something. */
export interface Density {
  x: Fraction;
  y: Fraction;
  unit: 'inch' | 'cm' | 'none';
}

const METRES_PER_INCH = 0.0254;
const RESOLUTION_UNIT = { none: 1, inch: 2, cm: 3 } as const;
const MOST_SHORT = 0xffff;
const MOST_LONG = 0x7fffffff;

/** Both directions changed places, for a picture that is turned by a quarter. */
export const turned = ({ x, y, unit }: Density): Density => ({ x: y, y: x, unit });

/** From PNG's pixels per metre (unit 1), in inches where these are whole numbers: 11811 is how 300 ppi is stored. */
export function fromMetre(x: number, y: number): Density {
  const inches = [x, y].map(n => Math.round(n * METRES_PER_INCH));
  const whole = inches.every((n, i) => Math.round(n / METRES_PER_INCH) === [x, y][i]);
  if (whole) return { x: [inches[0], 1], y: [inches[1], 1], unit: 'inch' };
  return { x: [x, 100], y: [y, 100], unit: 'cm' };
}

/** Whole pixels per metre for PNG's pHYs; null where the density cannot be said so. */
export function perMetre({ x, y, unit }: Density): { x: number; y: number; unit: 0 | 1 } | null {
  const scale = { none: 1, inch: 1 / METRES_PER_INCH, cm: 100 }[unit];
  const [across, down] = [x, y].map(([n, d]) => Math.round((n / d) * scale));
  if (!(across > 0 && down > 0 && across <= MOST_LONG && down <= MOST_LONG)) return null;
  return { x: across, y: down, unit: unit === 'none' ? 0 : 1 };
}

/** Whole numbers up to 65535 for JFIF; null where the density cannot be said so. */
export function jfifDensity({ x, y, unit }: Density): { x: number; y: number; unit: 0 | 1 | 2 } | null {
  const [across, down] = [x, y].map(([n, d]) => Math.round(n / d));
  if (!(across > 0 && down > 0 && across <= MOST_SHORT && down <= MOST_SHORT)) return null;
  return { x: across, y: down, unit: ({ none: 0, inch: 1, cm: 2 } as const)[unit] };
}

/** XResolution, YResolution, ResolutionUnit (TIFF 6.0 section 8; EXIF 2.32 section 4.6.4). */
export function densityFields({ x, y, unit }: Density, make: FieldMaker): Field[] {
  return [make.rational(282, x), make.rational(283, y), make.short(296, RESOLUTION_UNIT[unit])];
}
