/**
 * An uncompressed TIFF of 8 bits a channel, byte for byte the same everywhere (TIFF 6.0, sections 2, 8 and 16).
 * `pixel` gives one value a channel: 1 grey (0 = black), 3 RGB, 4 inks (0 = none).
 */
export function tiff(width: number, height: number, pixel: (x: number, y: number) => number[]): Buffer {
  const channels = pixel(0, 0).length;
  const data = Buffer.alloc(width * height * channels);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) data.set(pixel(x, y), (y * width + x) * channels);
  const SHORT = 3;
  const LONG = 4;
  const photometric = { 1: 1, 3: 2, 4: 5 }[channels]!;
  const tags: [tag: number, type: number, count: number, value: number][] = [
    [256, LONG, 1, width],
    [257, LONG, 1, height],
    [258, SHORT, channels, 8], // filled in below where it does not fit
    [259, SHORT, 1, 1],
    [262, SHORT, 1, photometric],
    [273, LONG, 1, 0], // where the data begins, below
    [277, SHORT, 1, channels],
    [278, LONG, 1, height],
    [279, LONG, 1, data.length],
  ];
  const bitsAt = 8 + 2 + tags.length * 12 + 4;
  const dataAt = bitsAt + channels * 2;
  const head = Buffer.alloc(dataAt);
  head.write('II*\0', 0, 'latin1');
  head.writeUInt32LE(8, 4);
  head.writeUInt16LE(tags.length, 8);
  tags.forEach(([tag, type, count, value], i) => {
    const at = 10 + i * 12;
    head.writeUInt16LE(tag, at);
    head.writeUInt16LE(type, at + 2);
    head.writeUInt32LE(count, at + 4);
    if (tag === 273) head.writeUInt32LE(dataAt, at + 8);
    else if (tag === 258 && count > 2) head.writeUInt32LE(bitsAt, at + 8);
    else head.writeUInt32LE(value, at + 8);
  });
  for (let c = 0; c < channels; c++) head.writeUInt16LE(8, bitsAt + c * 2);
  return Buffer.concat([head, data]);
}
