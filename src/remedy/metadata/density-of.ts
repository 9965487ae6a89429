// no-unit-test: carried.test.ts reads the density of every format
import type { Density } from './density';
import { fractionOf, numbersOf } from './exif-read';
import type { Found } from './source/found';
import { Tag } from './tags';

/**
 * The density that a file means: its format's own (JFIF, pHYs) before EXIF's, as everywhere in this program; one without
 * a unit only where nothing else is said and its pixels are not square.
 */
export function densityOf({ density, exif }: Found): Density | null {
  if (density && density.unit !== 'none') return density;
  const said = exif && ofExif(exif);
  if (said && said.unit !== 'none') return said;
  const shape = density ?? said;
  return shape && shape.x[0] * shape.y[1] !== shape.y[0] * shape.x[1] ? shape : null;
}

const UNITS: Record<number, Density['unit']> = { 1: 'none', 2: 'inch', 3: 'cm' };

function ofExif({ all, tree: { bigEndian } }: NonNullable<Found['exif']>): Density | null {
  const x = fractionOf(all.get(Tag.xResolution), bigEndian);
  const y = fractionOf(all.get(Tag.yResolution), bigEndian) ?? x;
  const unit = all.get(Tag.resolutionUnit);
  const kind = UNITS[unit ? (numbersOf(unit, bigEndian)[0] ?? 0) : 2];
  return x && y && kind ? { x, y, unit: kind } : null;
}
