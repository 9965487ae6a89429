// no-unit-test: raster.test.ts shows inks through it
import type { Sharp } from 'sharp';
import { labToSrgb } from '../colour/srgb';
import { sharp } from './decode-sharp';
import { readingOf } from './meaning';
import type { Header } from './types';

const BYTE = 255;
/** A sample of 16 bits is so many times its eight-bit sister. */
const WORD_BY_BYTE = 257;

/**
 * Inks as a screen shows them, by the very meaning they are judged by (their profile, else ANSI/CGATS TR 006, relative
 * to the paper): the decoder's own press profile shows black ink alone brown, which the judgement then contradicts.
 * @param shrunk the picture, upright and at its shown size, still in inks
 */
export async function shownInks(shrunk: Sharp, header: Header): Promise<Sharp> {
  const { data, info } = await shrunk
    .pipelineColourspace('cmyk')
    .toColourspace('cmyk')
    // as bytes, the decoder cuts off what is above 255 rather than scale it
    .raw({ depth: 'float' })
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels: step } = info;
  const n = width * height;
  const samples = new Float32Array(data.buffer, data.byteOffset, n * step);
  const unit = (await shrunk.metadata()).depth === 'ushort' ? WORD_BY_BYTE : 1;
  const inks = new Float32Array(n * 4);
  for (let i = 0; i < n; i++)
    for (let ink = 0; ink < 4; ink++) inks[i * 4 + ink] = samples[i * step + ink] / unit;
  const { meaning } = await readingOf(header);
  const lab = new Float32Array(n * 3);
  meaning.lab(inks, n, lab);
  const channels = step > 4 ? 4 : 3;
  const rgb = Buffer.alloc(n * channels);
  const point = new Float64Array(3);
  for (let i = 0; i < n; i++) {
    for (let c = 0; c < 3; c++) point[c] = lab[i * 3 + c];
    labToSrgb(point, point);
    for (let c = 0; c < 3; c++) rgb[i * channels + c] = Math.round(point[c] * BYTE);
    if (channels === 4) rgb[i * 4 + 3] = Math.round(samples[i * step + 4] / unit);
  }
  return sharp(rgb, { raw: { width, height, channels } });
}
