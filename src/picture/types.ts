// no-unit-test: types only
import type { Format, Remark, Space } from '../shared/picture';
import type { Remedied } from '../shared/remedy';

/** What a file says of itself, read by our own small parsers before any pixel is decoded. */
export interface Header {
  format: Format;
  width: number;
  height: number;
  /** Without alpha and spot inks, after palette expansion. */
  channels: number;
  /** Stored bits per sample (of the palette's colours where there is one). */
  bits: number;
  sample: 'uint' | 'int' | 'float';
  alpha: boolean;
  palette: boolean;
  space: Space;
  /** The stored tone runs backwards (min-is-white TIFF, CMYK JPEG without the ink marker): `decode` has put it right. */
  inverted: boolean;
  /** Spot inks beside C, M, Y, K: told, not judged. */
  spots: number;
  /** Which page this is, from 1: its place in the file, small previews counted though they are not read. */
  page: number;
  pages: number;
  orientation: number;
  ppi: { x: number; y: number } | null;
  icc: Uint8Array | null;
  /** Encoding exponent that a PNG without a profile states (0.45455 is the usual one); absent or null where none does. */
  gamma?: number | null;
  /** What its XMP says of the remedy that made it; absent or null where none did. */
  remedied?: Remedied | null;
  /** The file ends before the pixels that the header points at: a failed decode is then no damage but a cut. */
  incomplete?: boolean;
  /** More pixels than the file can hold whatever it does: not to be decoded at all. */
  impossible?: boolean;
  /** How a TIFF page is stored, for the decoder alone. */
  tiff?: TiffLayout;
  remarks: Remark[];
}

export interface TiffLayout {
  photometric: number;
  /** Where the file says so; -1 where it does not. */
  photometricAt: number;
  bigEndian: boolean;
  /** Samples per pixel, extra ones included. */
  samples: number;
  /** What the extra samples are: 0 unspecified, 1 associated alpha, 2 unassociated alpha. */
  extra: number[];
  /** Where the file says so; -1 where it does not. */
  extraAt: number;
  compression: number;
  /** Red, then green, then blue entries; empty without a palette. */
  colorMap: number[];
  /** Where the samples lie as they are, all in one piece; null where they are packed, scattered or the other way round. */
  bareAt: number | null;
}

/**
 * The exact stored channels of one page, interleaved, alpha last where there is one. Grey and RGB: 0 = black.
 * CMYK: 0 = no ink. Lab: L* x 327.67, a* and b* x 256 as Int16. Float: as stored, 0-1 = black to white (min-is-white
 * turned). Whole numbers always fill their array: 255 or 65535 is full, also where fewer bits are stored (1, 2, 4, 10,
 * 12); the native value is `value x (2^bits - 1) / full`, exactly a whole number.
 */
export interface Samples {
  width: number;
  height: number;
  /** Colour channels, without alpha. */
  channels: 1 | 3 | 4;
  alpha: boolean;
  space: Space;
  data: Uint8Array | Uint16Array | Int16Array | Float32Array;
}
