// no-unit-test: types only
import type { Field } from './fields';

/** What EXIF says of a picture, by its four directories (EXIF 2.32, section 4.6.3). Pointers between them left out. */
export interface ExifTree {
  /** Byte order of all values. */
  bigEndian: boolean;
  /** The first directory: what TIFF says too. Tags that describe the stored pixels are left out. */
  main: Field[];
  exif: Field[];
  gps: Field[];
  interop: Field[];
  /** Where the maker's note lay in its block: what is inside may count from the block's beginning. */
  noteAt: number | null;
}

export const emptyTree = (): ExifTree => ({
  bigEndian: false,
  main: [],
  exif: [],
  gps: [],
  interop: [],
  noteAt: null,
});
