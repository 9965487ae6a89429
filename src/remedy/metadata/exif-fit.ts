import type { RemedyFormat } from '../../shared/remedy';
import type { Stored } from '../encode/stored';
import { type Density, densityFields } from './density';
import { type Field, FieldMaker } from './fields';
import { Tag } from './tags';
import type { ExifTree } from './tree';

/** Said anew by every written file. */
const SAID_ANEW: number[] = [
  Tag.orientation,
  Tag.xResolution,
  Tag.yResolution,
  Tag.resolutionUnit,
  Tag.chromaPosition,
  Tag.colorSpace,
  Tag.pixelXDimension,
  Tag.pixelYDimension,
];
/** True of the old numbers only. */
const OF_OLD_NUMBERS: number[] = [Tag.compressedBits, Tag.gamma];
const OF_YCBCR: number[] = [Tag.componentsConfiguration];

/** Values of EXIF 2.32. */
const SRGB = 1;
const UNCALIBRATED = 0xffff;
const CENTRED = 1;
const R98 = 'R98';

/**
 * The directories as they are true of the written file: its size, colours, density and orientation, each where EXIF
 * wants it (EXIF 2.32, section 4.6.8: which tags a compressed picture has, and which an uncompressed).
 */
export function exifPutRight(
  tree: ExifTree,
  { width, height, space }: Stored,
  format: RemedyFormat,
  orientation: number,
  density: Density | null,
): ExifTree {
  const make = new FieldMaker(tree.bigEndian);
  const ycbcr = format === 'jpeg' && space === 'rgb';
  const stays = ({ id }: Field) =>
    !SAID_ANEW.includes(id) && !OF_OLD_NUMBERS.includes(id) && (ycbcr || !OF_YCBCR.includes(id));
  const saysOrientation = orientation !== 1 || tree.main.some(({ id }) => id === Tag.orientation);
  const whole = tree.exif.length > 0;
  const main = [
    ...tree.main.filter(stays),
    ...(saysOrientation ? [make.short(Tag.orientation, orientation)] : []),
    ...(density ? densityFields(density, make) : []),
    ...(whole && ycbcr ? [make.short(Tag.chromaPosition, CENTRED)] : []),
  ];
  const size = [make.long(Tag.pixelXDimension, width), make.long(Tag.pixelYDimension, height)];
  const colour = make.short(Tag.colorSpace, space === 'rgb' ? SRGB : UNCALIBRATED);
  // a TIFF says its size in its own directory
  const exif = whole ? [...tree.exif.filter(stays), colour, ...(format === 'tiff' ? [] : size)] : [];
  return { ...tree, main, exif, interop: format === 'tiff' ? [] : interopOf(tree.interop, space, make) };
}

/** The rule of a camera's file system: R98 says sRGB, R03 another RGB; of grey and inks it says nothing. */
function interopOf(fields: readonly Field[], space: Stored['space'], make: FieldMaker): Field[] {
  if (space !== 'rgb') return [];
  return fields.map(field => (field.id === Tag.interopIndex ? make.ascii(Tag.interopIndex, R98) : field));
}
