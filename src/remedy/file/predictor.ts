import type { Stored } from '../encode/stored';

/** The machine's own order of bytes. */
const LITTLE = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;

/**
 * Rows of samples as differences from the pixel to the left (TIFF 6.0, section 14), as bytes in the file's order.
 * @param rows whole rows
 * @param width pixels of a row
 */
export function predicted(rows: Stored['data'], channels: number, width: number, bigEndian: boolean): Buffer {
  const out = rows.slice();
  const row = width * channels;
  // typed arrays wrap round, as the predictor wants it
  for (let end = rows.length; end > 0; end -= row)
    for (let i = end - row + channels; i < end; i++) out[i] = rows[i] - rows[i - channels];
  const bytes = Buffer.from(out.buffer, out.byteOffset, out.byteLength);
  return out.BYTES_PER_ELEMENT === 2 && bigEndian === LITTLE ? bytes.swap16() : bytes;
}
