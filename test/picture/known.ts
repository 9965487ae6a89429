import type { Format, Space } from '../../src/shared/picture';

/**
 * The pictures of known channel values in known/, made by independent writers (known/make.py). The formulas are the
 * same as there.
 */
export interface Known {
  file: string;
  format: Format;
  page?: number;
  width: number;
  height: number;
  /** Without alpha and spot inks. */
  channels: 1 | 3 | 4;
  bits: number;
  space: Space;
  alpha?: boolean;
  palette?: boolean;
  spots?: number;
  orientation?: number;
  ppi?: { x: number; y: number };
  remarks?: string[];
  /** Native value of a channel (the alpha's is `channels`). */
  value(x: number, y: number, c: number): number;
  /** Allowed difference in native units; 0 without mention. */
  within?: number;
}

const W = 20;
const H = 12;

/** The pattern of make.py; `stride` channels are stored. */
function pattern(bits: number, stride = 4) {
  const count = 2 ** bits;
  return (x: number, y: number, c: number) => {
    if (c >= stride) throw new Error('no such channel');
    if (x === 0 && y === 0) return 0;
    if (x === W - 1 && y === H - 1) return count - 1;
    return (x * 7919 + y * 104729 + c * 3571) % count;
  };
}

/** Eight flat blocks, as ink in 0-1. */
const BLOCKS = [
  [0, 0, 0, 0],
  [0, 0, 0, 1],
  [1, 0, 0, 0],
  [0, 1, 0, 0],
  [0, 0, 1, 0],
  [0.5, 0.4, 0.4, 0],
  [0.2, 0.2, 0.2, 0.6],
  [1, 1, 1, 1],
];
const GREYS = [0, 1, 40, 100, 128, 200, 254, 255];
const block = (x: number, y: number) => (y >> 3) * 4 + (x >> 3);
const inks = (full: number) => (x: number, y: number, c: number) =>
  Math.floor(BLOCKS[block(x, y)][c] * full + 0.5);
const greys = (x: number, y: number) => GREYS[block(x, y)];

const pixels = { width: W, height: H };
const blocks = { width: 32, height: 16 };
const ramp = (i: number, c: number) => [i, 255 - i, (i * 7) % 256][c];
const ofPalette = (x: number, y: number, c: number) => ramp(pattern(8)(x, y, 0), c);

function tiff(file: string, rest: Omit<Known, 'file' | 'format' | 'width' | 'height'>): Known {
  return { file: `${file}.tif`, format: 'tiff', ...pixels, ...rest };
}

const perDepth = ([8, 16] as const).flatMap((bits): Known[] => {
  const full = 2 ** bits - 1;
  const plain = (stride: number) => ({ bits, value: pattern(bits, stride) });
  const cmyk = { channels: 4, space: 'cmyk', ...plain(4) } as const;
  /** Alpha and colour, where extra channels lie between or behind. */
  const grey = { channels: 1, space: 'grey' } as const;
  const rgb = { channels: 3, space: 'rgb' } as const;
  return [
    tiff(`grey${bits}`, { ...grey, ...plain(1) }),
    tiff(`grey${bits}-white0`, {
      ...grey,
      bits,
      value: (x, y, c) => full - pattern(bits)(x, y, c),
      remarks: ['min-is-white'],
    }),
    tiff(`grey${bits}-alpha`, { ...grey, ...plain(2), alpha: true }),
    tiff(`grey${bits}-extra`, { ...grey, ...plain(1), spots: 1, remarks: ['spot-inks'] }),
    tiff(`rgb${bits}`, { ...rgb, ...plain(3) }),
    tiff(`rgb${bits}-alpha`, { ...rgb, ...plain(4), alpha: true }),
    tiff(`rgb${bits}-extra`, { ...rgb, ...plain(3), spots: 1, remarks: ['spot-inks'] }),
    ...['', '-lzw', '-zip', '-planar', '-tiled', '-big'].map(way => tiff(`cmyk${bits}${way}`, cmyk)),
    tiff(`cmyk${bits}-alpha`, { ...cmyk, ...plain(5), alpha: true }),
    tiff(`cmyk${bits}-spot`, { ...cmyk, spots: 1, remarks: ['spot-inks'] }),
    { file: `grey${bits}.png`, format: 'png', ...pixels, ...grey, ...plain(1) },
    { file: `grey-alpha${bits}.png`, format: 'png', ...pixels, ...grey, ...plain(2), alpha: true },
    { file: `rgb${bits}.png`, format: 'png', ...pixels, ...rgb, ...plain(3) },
    { file: `rgb-alpha${bits}.png`, format: 'png', ...pixels, ...rgb, ...plain(4), alpha: true },
  ];
});

const tiffs: Known[] = [
  tiff('cmyk8-6inks', {
    channels: 4,
    space: 'cmyk',
    bits: 8,
    value: pattern(8),
    spots: 2,
    remarks: ['spot-inks'],
  }),
  { ...tiff('cmyk16-blocks', { channels: 4, space: 'cmyk', bits: 16, value: inks(65535) }), ...blocks },
  { ...tiff('cmyk8-jpeg', { channels: 4, space: 'cmyk', bits: 8, value: inks(255) }), ...blocks },
  { ...tiff('rgb8-jpeg', { channels: 3, space: 'rgb', bits: 8, value: greys }), ...blocks },
  tiff('grey-float', {
    channels: 1,
    space: 'grey',
    bits: 32,
    value: (x, y, c) => Math.fround(pattern(16)(x, y, c) / 65535),
  }),
  tiff('grey-float-white0', {
    channels: 1,
    space: 'grey',
    bits: 32,
    value: (x, y, c) => 1 - pattern(16)(x, y, c) / 65535,
    within: 1e-6,
    remarks: ['min-is-white'],
  }),
  tiff('rgb-float', {
    channels: 3,
    space: 'rgb',
    bits: 32,
    value: (x, y, c) => Math.fround(pattern(16)(x, y, c) / 65535),
  }),
  // stored 100, 50, 25 under 128 of 255: the colour that was covered is 199.2, 99.6, 49.8
  tiff('rgb8-associated', {
    channels: 3,
    space: 'rgb',
    bits: 8,
    alpha: true,
    value: (x, y, c) => (x + y === 0 ? 255 : [199, 100, 50, 128][c]),
  }),
  tiff('grey2', { channels: 1, space: 'grey', bits: 2, value: pattern(2) }),
  tiff('grey4', { channels: 1, space: 'grey', bits: 4, value: pattern(4) }),
  ...['grey1', 'grey1-fax'].map(file =>
    tiff(file, {
      channels: 1,
      space: 'grey',
      bits: 1,
      value: (x, y, c) => (pattern(8)(x, y, c) > 127 ? 1 : 0),
    }),
  ),
  tiff('grey1-white0', {
    channels: 1,
    space: 'grey',
    bits: 1,
    value: (x, y, c) => (pattern(8)(x, y, c) > 127 ? 0 : 1),
    remarks: ['min-is-white'],
  }),
  tiff('palette8', { channels: 3, space: 'rgb', bits: 8, palette: true, value: ofPalette }),
  // a grey palette is stored as a palette: three equal channels, not one
  tiff('palette8-grey', {
    channels: 3,
    space: 'rgb',
    bits: 8,
    palette: true,
    value: (x, y) => pattern(8)(x, y, 0),
  }),
  tiff('palette4', {
    channels: 3,
    space: 'rgb',
    bits: 8,
    palette: true,
    value: (x, y, c) => {
      const i = pattern(4)(x, y, 0) * 17;
      return [i, 255 - i, 100][c];
    },
  }),
  tiff('turned', {
    channels: 1,
    space: 'grey',
    bits: 8,
    value: pattern(8),
    orientation: 6,
    ppi: { x: 300, y: 240 },
    remarks: ['orientation'],
  }),
  tiff('per-cm', { channels: 1, space: 'grey', bits: 8, value: pattern(8), ppi: { x: 304.8, y: 304.8 } }),
  // page 3 is a reduced copy and no picture; page 4 keeps its number
  tiff('pages', { page: 1, channels: 1, space: 'grey', bits: 8, value: pattern(8) }),
  {
    ...tiff('pages', { page: 2, channels: 3, space: 'rgb', bits: 16, value: pattern(16) }),
    width: 8,
    height: 6,
  },
  tiff('pages', { page: 4, channels: 4, space: 'cmyk', bits: 8, value: pattern(8) }),
];

const signed = (v: number) => (v > 127 ? v - 256 : v);
const signedWord = (v: number) => (v > 32767 ? v - 65536 : v);

/** Lab in the decoder's units: L* x 327.67, a* and b* x 256 (TIFF 6.0 section 23; ICC.1 for ICCLab). */
const labs: Known[] = [
  tiff('lab8', {
    channels: 3,
    space: 'lab',
    bits: 8,
    value: (x, y, c) => {
      const v = pattern(8)(x, y, c);
      return c === 0 ? (v / 255) * 32767 : signed(v) * 256;
    },
    within: 0.5,
  }),
  tiff('lab16', {
    channels: 3,
    space: 'lab',
    bits: 16,
    value: (x, y, c) => {
      const v = pattern(16)(x, y, c);
      return c === 0 ? (v / 65535) * 32767 : signedWord(v);
    },
    within: 1,
  }),
  tiff('icclab8', {
    channels: 3,
    space: 'lab',
    bits: 8,
    value: (x, y, c) => {
      const v = pattern(8)(x, y, c);
      return c === 0 ? (v / 255) * 32767 : (v - 128) * 256;
    },
    within: 0.5,
  }),
  tiff('icclab16', {
    channels: 3,
    space: 'lab',
    bits: 16,
    // L* 100 is 0xFF00 here; what lies above is white
    value: (x, y, c) => {
      const v = pattern(16)(x, y, c);
      return c === 0 ? Math.min(32767, (v / 0xff00) * 32767) : v - 0x8000;
    },
    within: 0.5,
  }),
];

const jpeg = { format: 'jpeg', bits: 8, ...blocks } as const;
const jpegs: Known[] = [
  { file: 'grey.jpg', ...jpeg, channels: 1, space: 'grey', value: greys, ppi: { x: 300, y: 300 } },
  { file: 'rgb-neutral.jpg', ...jpeg, channels: 3, space: 'rgb', value: greys },
  {
    file: 'turned.jpg',
    ...jpeg,
    channels: 1,
    space: 'grey',
    value: greys,
    orientation: 8,
    ppi: { x: 240, y: 240 },
    remarks: ['orientation'],
  },
  { file: 'cmyk-adobe.jpg', ...jpeg, channels: 4, space: 'cmyk', value: inks(255) },
  {
    file: 'cmyk-unmarked.jpg',
    ...jpeg,
    channels: 4,
    space: 'cmyk',
    value: inks(255),
    remarks: ['no-ink-marker'],
  },
  // luma and chroma round twice more: libjpeg itself gives 126 for 128 and 254 for 255
  { file: 'ycck.jpg', ...jpeg, channels: 4, space: 'cmyk', value: inks(255), within: 2 },
];

const png = { format: 'png', ...pixels } as const;
const key = (value: Known['value'], colours: number) => (x: number, y: number, c: number) =>
  c < colours ? value(x, y, c) : [...Array(colours).keys()].every(i => value(x, y, i) === 0) ? 0 : 255;
const pngs: Known[] = [
  ...([1, 2, 4] as const).map(
    (bits): Known => ({
      file: `grey${bits}.png`,
      ...png,
      channels: 1,
      space: 'grey',
      bits,
      value: pattern(bits),
    }),
  ),
  {
    file: 'grey8-key.png',
    ...png,
    channels: 1,
    space: 'grey',
    bits: 8,
    alpha: true,
    value: key(pattern(8), 1),
  },
  {
    file: 'rgb8-key.png',
    ...png,
    channels: 3,
    space: 'rgb',
    bits: 8,
    alpha: true,
    value: key(pattern(8), 3),
  },
  {
    file: 'palette8.png',
    ...png,
    channels: 3,
    space: 'rgb',
    bits: 8,
    palette: true,
    value: ofPalette,
    ppi: { x: 300, y: 300 },
  },
  {
    file: 'palette8-key.png',
    ...png,
    channels: 3,
    space: 'rgb',
    bits: 8,
    palette: true,
    alpha: true,
    value: (x, y, c) => (c < 3 ? ofPalette(x, y, c) : pattern(8)(x, y, 0) === 3 ? 0 : 255),
  },
  {
    file: 'palette8-grey.png',
    ...png,
    channels: 3,
    space: 'rgb',
    bits: 8,
    palette: true,
    value: (x, y) => pattern(8)(x, y, 0),
  },
  {
    file: 'palette16.png',
    ...png,
    channels: 3,
    space: 'rgb',
    bits: 8,
    palette: true,
    value: (x, y, c) => {
      const i = pattern(4)(x, y, 0) * 17;
      return [i, 255 - i, 100][c];
    },
  },
  { file: 'grey8-profile.png', ...png, channels: 1, space: 'grey', bits: 8, value: pattern(8) },
];

const rgb = { ...pixels, channels: 3, space: 'rgb', bits: 8 } as const;
const others: Known[] = [
  { file: 'palette.gif', format: 'gif', ...rgb, palette: true, value: ofPalette },
  {
    // what cannot be seen has no colour left
    file: 'palette-key.gif',
    format: 'gif',
    ...rgb,
    palette: true,
    alpha: true,
    value: (x, y, c) => (pattern(8)(x, y, 0) === 3 ? 0 : c < 3 ? ofPalette(x, y, c) : 255),
  },
  { file: 'palette-grey.gif', format: 'gif', ...rgb, palette: true, value: (x, y) => pattern(8)(x, y, 0) },
  { file: 'grey.webp', format: 'webp', ...rgb, value: (x, y) => pattern(8)(x, y, 0) },
  { file: 'rgb.webp', format: 'webp', ...rgb, value: pattern(8) },
  { file: 'rgb-alpha.webp', format: 'webp', ...rgb, alpha: true, value: pattern(8) },
  { file: 'rgb.avif', format: 'avif', ...rgb, value: pattern(8) },
  { file: 'rgb-alpha.avif', format: 'avif', ...rgb, alpha: true, value: pattern(8) },
  {
    file: 'mono.avif',
    format: 'avif',
    ...rgb,
    value: (x, y) => pattern(8)(x, y, 0),
    remarks: ['monochrome-container'],
  },
  {
    // turned by its container a quarter anticlockwise, which is part of decoding
    file: 'rotated.avif',
    format: 'avif',
    ...rgb,
    width: H,
    height: W,
    value: (x, y, c) => pattern(8)(W - 1 - y, x, c),
  },
  {
    file: 'mono10.avif',
    format: 'avif',
    ...rgb,
    bits: 10,
    // ten of the sixteen bits, rounded by the writer
    value: (x, y) => (pattern(16)(x, y, 0) / 65535) * 1023,
    within: 1,
    remarks: ['monochrome-container'],
  },
];

export const known: Known[] = [...perDepth, ...tiffs, ...labs, ...jpegs, ...pngs, ...others];

/** Known by name, not read. */
export const refused: { file: string; format: Format; says: RegExp }[] = [
  { file: 'picture.bmp', format: 'bmp', says: /BMP/ },
  { file: 'picture.psd', format: 'psd', says: /layered document \(RGB, 8 bits, 20 x 12 pixels\)/ },
  { file: 'picture.jp2', format: 'jp2', says: /JPEG 2000/ },
  { file: 'picture.heic', format: 'heic', says: /HEIC/ },
  { file: 'picture.ppm', format: 'unknown', says: /portable bitmap/ },
];
