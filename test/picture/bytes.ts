/** Byte-level writers for headers that no ordinary program writes. */

export const SHORT = 3;
export const LONG = 4;
export const RATIONAL = 5;
export const UNDEFINED = 7;
export const LONG8 = 16;

export type Tag = [id: number, type: number, values: number[]];

interface Layout {
  big?: boolean;
  bigEndian?: boolean;
  /** Offset that the last directory links to, instead of 0. */
  last?: number;
}

const SIZE: Record<number, number> = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 7: 1, 16: 8 };

/** A TIFF of directories only (TIFF 6.0; BigTIFF), one after the other, with their values behind each. */
export function tiffBytes(pages: Tag[][], { big = false, bigEndian = false, last = 0 }: Layout = {}): Buffer {
  const out = Buffer.alloc(1 << 16);
  const put = (value: number, at: number, size: number) => {
    if (size === 8)
      bigEndian ? out.writeBigUInt64BE(BigInt(value), at) : out.writeBigUInt64LE(BigInt(value), at);
    else if (bigEndian) out.writeUIntBE(value, at, size);
    else out.writeUIntLE(value, at, size);
  };
  const word = big ? 8 : 4;
  out.write(bigEndian ? 'MM' : 'II', 'latin1');
  put(big ? 43 : 42, 2, 2);
  if (big) put(8, 4, 2);
  let at = big ? 16 : 8;
  put(at, big ? 8 : 4, word);
  pages.forEach((tags, page) => {
    put(tags.length, at, big ? 8 : 2);
    let field = at + (big ? 8 : 2);
    let free = field + tags.length * (big ? 20 : 12) + word;
    for (const [id, type, values] of tags) {
      put(id, field, 2);
      put(type, field + 2, 2);
      const count = type === RATIONAL ? values.length / 2 : values.length;
      put(count, field + 4, word);
      let to = field + 4 + word;
      if (count * SIZE[type] > word) {
        put(free, to, word);
        to = free;
        free += count * SIZE[type];
      }
      const size = type === RATIONAL ? 4 : SIZE[type];
      values.forEach((v, i) => {
        put(v, to + i * size, size);
      });
      field += big ? 20 : 12;
    }
    put(page === pages.length - 1 ? last : free, field, word);
    at = free;
  });
  return out.subarray(0, at);
}

/** The tags that every page needs: 8 x 8 pixels of grey. */
export function greyPage(more: Tag[] = []): Tag[] {
  const tags: Tag[] = [
    [256, LONG, [8]],
    [257, LONG, [8]],
    [258, SHORT, [8]],
    [259, SHORT, [1]],
    [262, SHORT, [1]],
  ];
  const given = new Set(more.map(([id]) => id));
  return [...tags.filter(([id]) => !given.has(id)), ...more];
}

/** A JPEG marker segment (T.81 annex B.1.1.4). */
export function segment(marker: number, body: Buffer | string): Buffer {
  const content = Buffer.from(body as string, 'latin1');
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}

/** A baseline frame header: precision, height, width, components. */
export function frame(
  components: number,
  { precision = 8, marker = 0xc0, width = 16, height = 8 } = {},
): Buffer {
  const body = Buffer.alloc(6 + components * 3);
  body[0] = precision;
  body.writeUInt16BE(height, 1);
  body.writeUInt16BE(width, 3);
  body[5] = components;
  return segment(marker, body);
}

/** The header of a JPEG: no scan follows. */
export function jpegBytes(...segments: Buffer[]): Buffer {
  return Buffer.concat([Buffer.from([0xff, 0xd8]), ...segments, Buffer.from([0xff, 0xda, 0, 2])]);
}

/** A PNG chunk; the check sum is left out, which no header needs. */
export function chunk(type: string, body: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length);
  head.write(type, 4, 'latin1');
  return Buffer.concat([head, body, Buffer.alloc(4)]);
}

export function pngBytes(depth: number, colourType: number, ...chunks: Buffer[]): Buffer {
  const ihdr = Buffer.alloc(13);
  ihdr.writeUInt32BE(16, 0);
  ihdr.writeUInt32BE(8, 4);
  ihdr[8] = depth;
  ihdr[9] = colourType;
  const end = chunk('IEND', Buffer.alloc(0));
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', ihdr), ...chunks, end]);
}

/** A WebP chunk, padded to even length. */
export function riffChunk(type: string, body: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 'latin1');
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body, Buffer.alloc(body.length & 1)]);
}

export function webpBytes(...chunks: Buffer[]): Buffer {
  const body = Buffer.concat([Buffer.from('WEBP'), ...chunks]);
  return riffChunk('RIFF', body);
}

/** A box of an ISO base media file. */
export function box(type: string, ...parts: Buffer[]): Buffer {
  const head = Buffer.alloc(8);
  head.writeUInt32BE(8 + parts.reduce((sum, p) => sum + p.length, 0));
  head.write(type, 4, 'latin1');
  return Buffer.concat([head, ...parts]);
}
