import type { Header } from '../types';
import { Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

const EXTENSION = 0x21;
const GRAPHIC_CONTROL = 0xf9;
const IMAGE = 0x2c;
const MOST_BLOCKS = 100_000;

/** GIF89a specification, sections 18-23. Only the first frame of a moving GIF is a picture that can be printed. */
export function readGif(source: Source): Header {
  const n = new Numbers(source, false);
  const [width, height] = [n.u16(6), n.u16(8)];
  return {
    format: 'gif',
    width,
    height,
    channels: 3,
    bits: 8,
    sample: 'uint',
    alpha: firstFrameShowsThrough(n, width, height),
    palette: true,
    space: 'rgb',
    inverted: false,
    spots: 0,
    page: 1,
    pages: 1,
    orientation: 1,
    ppi: null,
    icc: null,
    remarks: [],
  };
}

/** Transparent by a colour of its own, or because the first frame does not cover the canvas. */
function firstFrameShowsThrough(n: Numbers, width: number, height: number): boolean {
  const packed = n.u8(10);
  let at = 13 + (packed & 0x80 ? 3 << ((packed & 7) + 1) : 0);
  let transparent = false;
  for (let i = 0; i < MOST_BLOCKS; i++) {
    const kind = n.u8(at);
    if (kind === IMAGE) {
      const covers =
        n.u16(at + 1) === 0 && n.u16(at + 3) === 0 && n.u16(at + 5) >= width && n.u16(at + 7) >= height;
      return transparent || !covers;
    }
    if (kind !== EXTENSION) break;
    if (n.u8(at + 1) === GRAPHIC_CONTROL && n.u8(at + 2) >= 4) transparent = (n.u8(at + 3) & 1) === 1;
    at += 2;
    for (let size = n.u8(at); size > 0 && i < MOST_BLOCKS; size = n.u8(at), i++) at += size + 1;
    at++;
  }
  throw new UnreadableError('corrupt', 'The GIF holds no picture. Export it again.', 'gif', {
    width,
    height,
  });
}
