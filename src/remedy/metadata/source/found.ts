// no-unit-test: test/remedy/metadata/source/*.test.ts find everything by it
import { bufferSource } from '../../../picture/header';
import type { Text } from '../carried';
import type { Density } from '../density';
import { type ExifRead, readTree } from '../exif-read';

/** What lies in a file beside its pixels, before it is put in order. */
export interface Found {
  exif: ExifRead | null;
  /** As the format itself says it, outside of EXIF. */
  density: Density | null;
  /** Image resources with IPTC among them. */
  resources: Buffer | null;
  /** IPTC that stands by itself. */
  iptc: Buffer | null;
  xmp: Buffer | null;
  /** What did not fit into a JPEG's first packet. */
  xmpMore: Buffer | null;
  texts: Text[];
  told: string[];
}

export const nothing = (): Found => ({
  exif: null,
  density: null,
  resources: null,
  iptc: null,
  xmp: null,
  xmpMore: null,
  texts: [],
  told: [],
});

const EXIF_HEAD = 'Exif\0\0';

/** Reads an EXIF block; some writers keep JPEG's head before it in other formats. */
export function takeExif(found: Found, block: Buffer): void {
  if (found.exif) return;
  const headed = block.toString('latin1', 0, EXIF_HEAD.length) === EXIF_HEAD;
  try {
    found.exif = readTree(bufferSource(headed ? block.subarray(EXIF_HEAD.length) : block));
  } catch {
    found.told.push('The EXIF data of the file is damaged and was left out.');
  }
}
