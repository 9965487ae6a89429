// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
/** Photometric interpretations of TIFF 6.0, sections 8, 16 and 23. */
const PHOTOMETRIC = { grey: 1, rgb: 2, inks: 5, lab: 8 } as const;
const CHANNELS = { grey: 1, rgb: 3, inks: 4, lab: 3 } as const;

export interface TiffPixels {
  width: number;
  height: number;
  kind: keyof typeof PHOTOMETRIC;
  /** Interleaved; one bit a pixel is packed, rows filled up to whole bytes. */
  data: Uint8Array | Uint16Array;
  bits: 1 | 8 | 16;
}

/**
 * A plain TIFF of one strip, little-endian, without compression: the stored values are exactly those given. The image
 * library cannot be handed four inks as raw values, so the demo writes such files by itself.
 */
export function tiff({ width, height, kind, data, bits }: TiffPixels, ppi: number): Buffer {
  const channels = CHANNELS[kind];
  const pixels = Buffer.from(data.buffer, data.byteOffset, data.byteLength);
  const SHORT = 3;
  const LONG = 4;
  const RATIONAL = 5;
  // values that do not fit into an entry lie behind the directory
  const entries = 12;
  const extra = 8 + 2 + entries * 12 + 4;
  const bitsAt = extra;
  const ppiAt = bitsAt + 8;
  const pixelsAt = ppiAt + 8;
  const file = Buffer.alloc(pixelsAt + pixels.length);
  file.write('II', 0, 'latin1');
  file.writeUInt16LE(42, 2);
  file.writeUInt32LE(8, 4);
  file.writeUInt16LE(entries, 8);
  let at = 10;
  const entry = (tag: number, type: number, count: number, value: number) => {
    file.writeUInt16LE(tag, at);
    file.writeUInt16LE(type, at + 2);
    file.writeUInt32LE(count, at + 4);
    if (type === SHORT && count === 1) file.writeUInt16LE(value, at + 8);
    else file.writeUInt32LE(value, at + 8);
    at += 12;
  };
  entry(256, LONG, 1, width);
  entry(257, LONG, 1, height);
  entry(258, SHORT, channels, channels === 1 ? bits : bitsAt);
  entry(259, SHORT, 1, 1);
  entry(262, SHORT, 1, PHOTOMETRIC[kind]);
  entry(273, LONG, 1, pixelsAt);
  entry(277, SHORT, 1, channels);
  entry(278, LONG, 1, height);
  entry(279, LONG, 1, pixels.length);
  entry(282, RATIONAL, 1, ppiAt);
  entry(283, RATIONAL, 1, ppiAt);
  entry(296, SHORT, 1, 2);
  for (let i = 0; i < 4; i++) file.writeUInt16LE(bits, bitsAt + 2 * i);
  file.writeUInt32LE(ppi, ppiAt);
  file.writeUInt32LE(1, ppiAt + 4);
  pixels.copy(file, pixelsAt);
  return file;
}
