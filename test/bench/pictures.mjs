// Pictures of real sizes with the texture of photographs, drawn by code: the decoder and the pixel pass have as much
// to do as in life. Made once, kept in the system's folder for temporary files.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';

const FOLDER = path.join(os.tmpdir(), 'evengrey-bench-2');

/** Tones 0-1: clouds of several sizes, then grain; the same for a seed. */
async function tones(width, height, seed) {
  let state = seed;
  const random = () => (state = (state * 1664525 + 1013904223) >>> 0) / 2 ** 32;
  const sum = new Float32Array(width * height);
  for (const [cells, share] of [
    [4, 0.45],
    [24, 0.3],
    [160, 0.15],
    [700, 0.1],
  ]) {
    const rows = Math.max(2, Math.round((cells * height) / width));
    const small = Buffer.from(Uint8Array.from({ length: cells * rows }, () => random() * 256));
    const large = await sharp(small, { raw: { width: cells, height: rows, channels: 1 } })
      .resize(width, height, { kernel: 'cubic', fit: 'fill' })
      .extractChannel(0)
      .raw()
      .toBuffer();
    for (let i = 0; i < sum.length; i++) sum[i] += (share * large[i]) / 255;
  }
  for (let i = 0; i < sum.length; i++) {
    const stretched = (sum[i] - 0.5) * 1.8 + 0.5 + (random() + random() - 1) * 0.03;
    sum[i] = Math.min(1, Math.max(0, stretched));
  }
  return sum;
}

const COLOURS = {
  grey: () => [0, 0, 0],
  /** A cast in the shadows, as a scanner leaves it. */
  cast: t => [0, (1 - t) * 5, 0],
  colour: (t, x, y) => [60 * Math.sin(x * 5), 40 * Math.cos(y * 4), 50 * Math.sin((x + y) * 3 + t)],
};

async function rgb8(width, height, seed, kind) {
  const grey = await tones(width, height, seed);
  const data = Buffer.alloc(width * height * 3);
  const tint = COLOURS[kind];
  for (let i = 0; i < grey.length; i++) {
    const [r, g, b] = tint(grey[i], (i % width) / width, i / width / height);
    const value = Math.round(grey[i] * 255);
    data[3 * i] = Math.min(255, Math.max(0, value + r));
    data[3 * i + 1] = Math.min(255, Math.max(0, value + g));
    data[3 * i + 2] = Math.min(255, Math.max(0, value + b));
  }
  return sharp(data, { raw: { width, height, channels: 3 } });
}

async function rgb16(width, height, seed) {
  const grey = await tones(width, height, seed);
  const data = new Uint16Array(width * height * 3);
  for (let i = 0; i < grey.length; i++) data.fill(Math.round(grey[i] * 65535), 3 * i, 3 * i + 3);
  return sharp(data, { raw: { width, height, channels: 3 } }).toColourspace('rgb16');
}

/** Four inks with most of the grey in black, as separations are. */
async function cmyk(width, height, seed) {
  const grey = await tones(width, height, seed);
  const data = Buffer.alloc(width * height * 4);
  for (let i = 0; i < grey.length; i++) {
    const ink = 1 - grey[i];
    data[4 * i] = 170 * ink;
    data[4 * i + 1] = 140 * ink;
    data[4 * i + 2] = 140 * ink;
    data[4 * i + 3] = 220 * ink * ink;
  }
  return sharp(inkTiff(data, width, height))
    .pipelineColourspace('cmyk')
    .toColourspace('cmyk');
}

/** An uncompressed TIFF of four inks: raw samples given to the decoder directly would be red, green, blue and alpha. */
function inkTiff(data, width, height) {
  const [SHORT, LONG] = [3, 4];
  const bitsAt = 8;
  const pixelsAt = 16;
  const tags = [
    [256, LONG, 1, width],
    [257, LONG, 1, height],
    [258, SHORT, 4, bitsAt],
    [259, SHORT, 1, 1],
    [262, SHORT, 1, 5],
    [273, LONG, 1, pixelsAt],
    [277, SHORT, 1, 4],
    [278, LONG, 1, height],
    [279, LONG, 1, data.length],
  ];
  const head = Buffer.alloc(pixelsAt);
  head.write('II*\0');
  head.writeUInt32LE(pixelsAt + data.length, 4);
  for (let i = 0; i < 4; i++) head.writeUInt16LE(8, bitsAt + 2 * i);
  const directory = Buffer.alloc(2 + tags.length * 12 + 4);
  directory.writeUInt16LE(tags.length);
  for (const [i, [tag, type, count, value]] of tags.entries()) {
    const at = 2 + i * 12;
    directory.writeUInt16LE(tag, at);
    directory.writeUInt16LE(type, at + 2);
    directory.writeUInt32LE(count, at + 4);
    directory.writeUInt32LE(value, at + 8);
  }
  return Buffer.concat([head, data, directory]);
}

const jpeg = { quality: 92, chromaSubsampling: '4:2:0' };
const tiff = { compression: 'lzw', predictor: 'horizontal' };
/** What a book is made of. */
const USUAL = {
  '24 MP JPEG 4:2:0, R=G=B': ['24.jpg', async () => (await rgb8(6000, 4000, 1, 'grey')).jpeg(jpeg)],
  '12 MP JPEG 4:2:0, R=G=B': ['12.jpg', async () => (await rgb8(4000, 3000, 4, 'grey')).jpeg(jpeg)],
  '12 MP TIFF, 16 bit RGB': ['12-16.tif', async () => (await rgb16(4000, 3000, 5)).tiff(tiff)],
  '12 MP PNG, 8 bit RGB': ['12.png', async () => (await rgb8(4000, 3000, 6, 'grey')).png()],
  '12 MP TIFF, four inks': ['12-cmyk.tif', async () => (await cmyk(4000, 3000, 7)).tiff(tiff)],
  '12 MP JPEG, four inks': ['12-cmyk.jpg', async () => (await cmyk(4000, 3000, 8)).jpeg(jpeg)],
};
/** What wants more work: every block of a coloured picture strays. */
const COLOURED = {
  '24 MP JPEG 4:2:0, a cast': ['24-cast.jpg', async () => (await rgb8(6000, 4000, 2, 'cast')).jpeg(jpeg)],
  '24 MP JPEG 4:2:0, colour': ['24-colour.jpg', async () => (await rgb8(6000, 4000, 3, 'colour')).jpeg(jpeg)],
};
/** What a conversion is given. */
const CONVERTED = {
  'JPEG, R=G=B': USUAL['24 MP JPEG 4:2:0, R=G=B'],
  'JPEG, a cast': COLOURED['24 MP JPEG 4:2:0, a cast'],
  'JPEG, colour': COLOURED['24 MP JPEG 4:2:0, colour'],
  'PNG, 8 bit RGB': ['24.png', async () => (await rgb8(6000, 4000, 10, 'grey')).png()],
  'TIFF, 8 bit RGB': ['24.tif', async () => (await rgb8(6000, 4000, 11, 'grey')).tiff(tiff)],
  'TIFF, 16 bit RGB': ['24-16.tif', async () => (await rgb16(6000, 4000, 12)).tiff(tiff)],
  'TIFF, four inks': ['24-cmyk.tif', async () => (await cmyk(6000, 4000, 13)).tiff(tiff)],
  'JPEG, four inks': ['24-cmyk.jpg', async () => (await cmyk(6000, 4000, 14)).jpeg(jpeg)],
};

/** Name -> file of both kinds, made where it is not there yet. */
export const benchPictures = async () => ({ usual: await made(USUAL), coloured: await made(COLOURED) });

/** The same of the 24-megapixel pictures that are converted. */
export const convertedPictures = () => made(CONVERTED);

/** 30 pictures of a book, R=G=B, each as it was and as it was exported again, lighter: pairs of files. */
export async function changedPictures(width, height) {
  const named = Array.from({ length: 30 }, (_, i) => {
    const draw = () => rgb8(width, height, 20 + i, 'grey');
    return ['before', 'after'].map(side => [
      `${width}x${height}-${i}-${side}.jpg`,
      async () => (side === 'before' ? await draw() : (await draw()).linear(0.97, 6)).jpeg(jpeg),
    ]);
  });
  const files = await made(Object.fromEntries(named.flat().map(([file, make]) => [file, [file, make]])));
  return named.map(sides => sides.map(([file]) => files[file]));
}

async function made(makers) {
  fs.mkdirSync(FOLDER, { recursive: true });
  const files = {};
  for (const [name, [file, make]] of Object.entries(makers)) {
    const target = path.join(FOLDER, file);
    if (!fs.existsSync(target)) {
      process.stderr.write(`drawing ${name}\n`);
      await (await make()).toFile(`${target}.part`);
      fs.renameSync(`${target}.part`, target);
    }
    files[name] = target;
  }
  return files;
}

/** A folder of small unchanged pictures, each with other content. */
export async function manySmallPictures(folder, count) {
  const { data, info } = await (await rgb8(240, 160, 9, 'grey')).raw().toBuffer({ resolveWithObject: true });
  for (let i = 0; i < count; i++) {
    for (const channel of [0, 1, 2]) data[3 * i + channel] = i & 255;
    data[0] = data[1] = data[2] = i >> 2;
    await sharp(data, { raw: info })
      .png()
      .toFile(path.join(folder, `${String(i).padStart(4, '0')}.png`));
  }
}
