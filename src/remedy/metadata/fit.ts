import { parsePacket } from '../../picture/xmp/packet';
import type { RemedyFormat } from '../../shared/remedy';
import type { Stored } from '../encode/stored';
import type { Carried } from './carried';
import { exifPutRight } from './exif-fit';
import { shrunk } from './exif-shrink';
import { textsHoused } from './texts-fit';
import { emptyTree } from './tree';
import { packetText } from './xmp/properties';
import { putRight } from './xmp/put-right';

/** An EXIF block of a JPEG lies in one segment, behind its head. */
const MOST_JPEG_EXIF = 0xffff - 2 - 6;
const MOST_EXIF = 32 << 20;

/**
 * What is carried as the written file is to say it: its size, colours, density and orientation put right, in the places
 * that its format has. What finds no place is told.
 */
export function fitted(carried: Carried, stored: Stored, format: RemedyFormat): Carried {
  const { orientation, density } = carried;
  const told = [...carried.told];
  const housed = textsHoused(carried, format, told);
  // JFIF, which says a JPEG's density, is not of inks; and only EXIF turns a JPEG or PNG
  const needed = orientation !== 1 || (format === 'jpeg' && stored.space === 'cmyk' && density !== null);
  const tree = housed.exif ?? (needed || format === 'tiff' ? emptyTree() : null);
  const exif =
    tree &&
    shrunk(
      exifPutRight(tree, stored, format, orientation, density),
      format === 'jpeg' ? MOST_JPEG_EXIF : MOST_EXIF,
      told,
    );
  const packet = carried.xmp === null ? null : parsePacket(Buffer.from(carried.xmp));
  if (packet) putRight(packet, stored, format, orientation, density);
  return { ...carried, ...housed, exif, xmp: packet && packetText(packet), told };
}
