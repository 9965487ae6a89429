import type { Header } from '../../picture/types';
import { LONGEST_PACKET, parsePacket } from '../../picture/xmp/packet';
import type { Density } from './density';
import { densityOf } from './density-of';
import { iptcBytes, iptcMerged } from './iptc';
import { carriedResources, IPTC, PREVIEWS, readResources } from './resources';
import { fromAvif } from './source/avif';
import { type Found, nothing } from './source/found';
import { fromJpeg } from './source/jpeg';
import { fromPng } from './source/png';
import { fromTiff } from './source/tiff';
import { fromWebp } from './source/webp';
import type { ExifTree } from './tree';
import { joined } from './xmp/joined';
import { packetText } from './xmp/properties';

/** A text of a file that belongs to no standard of metadata: a JPEG's comment, a PNG's text chunks. */
export interface Text {
  /** As PNG names it: `Comment`, `Title`, ... */
  keyword: string;
  text: string;
}

/** An image resource beside the picture, of which IPTC (0x0404) is one. */
export interface Resource {
  id: number;
  /** Pascal string without its length. */
  name: Buffer;
  data: Buffer;
}

/** What a picture's file says beside its pixels, in a form that every format written here can take. */
export interface Carried {
  density: Density | null;
  /** 1-8 (EXIF 2.32): how the written pixels are to be turned when shown. */
  orientation: number;
  exif: ExifTree | null;
  /** IPTC-IIM data sets, as they were. */
  iptc: Buffer | null;
  /** IPTC left out. */
  resources: Resource[];
  /** A whole packet (ISO 16684-1), well-formed. */
  xmp: string | null;
  texts: Text[];
  /** What was lost or put right, in plain sentences. */
  told: string[];
}

/**
 * Everything that is to go along from the file of a picture. Never throws for what the file holds: what cannot be read
 * is told.
 * @param source the whole file
 */
export function carriedFrom(source: Buffer, header: Header): Carried {
  const found = findIn(source, header);
  const told = [...found.told];
  const { resources, whole } = readResources(found.resources ?? Buffer.alloc(0));
  if (!whole)
    told.push('A part of the image resources (where IPTC data are kept) is damaged and was left out.');
  const { exif } = found;
  if (exif && exif.damaged > 0)
    told.push(
      `${exif.damaged === 1 ? 'One EXIF tag is' : `${exif.damaged} EXIF tags are`} damaged and could not be carried.`,
    );
  if (exif?.raw)
    told.push(
      'What the file says of its raw picture was left out; the picture that can be read was converted.',
    );
  if (exif?.more || resources.some(({ id }) => PREVIEWS.includes(id)))
    told.push('The small preview inside the file was left out: it shows the picture before.');
  return {
    density: densityOf(found),
    orientation: header.orientation,
    exif: exif && isEmpty(exif.tree) ? null : (exif?.tree ?? null),
    iptc: iptcOf(
      [
        ...(found.iptc ? [found.iptc] : []),
        ...resources.filter(({ id }) => id === IPTC).map(({ data }) => data),
      ],
      told,
    ),
    resources: carriedResources(resources),
    xmp: xmpOf(found, told),
    texts: found.texts,
    told,
  };
}

function findIn(source: Buffer, header: Header): Found {
  try {
    switch (header.format) {
      case 'jpeg':
        return fromJpeg(source);
      case 'png':
        return fromPng(source);
      case 'tiff':
        return fromTiff(source, header.page);
      case 'webp':
        return fromWebp(source);
      case 'avif':
        return fromAvif(source);
      default:
        return nothing();
    }
  } catch {
    return { ...nothing(), told: ['The metadata of the file are damaged and were left out.'] };
  }
}

const isEmpty = ({ main, exif, gps, interop }: ExifTree): boolean =>
  main.length + exif.length + gps.length + interop.length === 0;

/** All of them as one: a TIFF may hold IPTC by itself, which goes before, and among its resources too. */
function iptcOf(blocks: readonly Buffer[], told: string[]): Buffer | null {
  const sound = blocks.map(iptcBytes).filter(block => block !== null);
  if (sound.length < blocks.length)
    told.push(
      sound.length === 0
        ? 'The IPTC data of the file are damaged and were left out.'
        : 'The file holds IPTC data more than once; a damaged block of them was left out.',
    );
  return sound.length > 0 ? sound.reduce((one, other) => iptcMerged(one, other, told)) : null;
}

function xmpOf({ xmp, xmpMore }: Found, told: string[]): string | null {
  if (!xmp) return null;
  const packet = parsePacket(xmp);
  if (!packet) {
    told.push(
      xmp.length > LONGEST_PACKET
        ? 'The XMP data of the file are larger than can be carried and were left out.'
        : 'The XMP data of the file are damaged and were left out.',
    );
    return null;
  }
  const more = xmpMore && parsePacket(xmpMore);
  if (xmpMore && !more) told.push('A part of the XMP data of the file is damaged and was left out.');
  return packetText(more ? joined(packet, more) : packet);
}
