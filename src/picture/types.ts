import type { Format, Remark, Space } from '../shared/picture';

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
  pages: number;
  orientation: number;
  ppi: { x: number; y: number } | null;
  icc: Uint8Array | null;
  remarks: Remark[];
}

/**
 * The exact stored channels of one page, interleaved, alpha last where there is one. Grey and RGB: 0 = black.
 * CMYK: 0 = no ink. Lab: L* x 327.67, a* and b* x 256 as Int16. Float: as stored, 0-1 = black to white.
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
