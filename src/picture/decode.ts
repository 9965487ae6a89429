import { readFileSync } from 'node:fs';
import { bareSamples, isBare } from './decode-bare';
import { decodeError } from './decode-errors';
import { refuseOverwritten } from './decode-jpeg-whole';
import { labFromBytes, labFromFloats, labFromWords } from './decode-lab';
import { applyPalette, type Channels, invert, keepChannels, spread, unpremultiply } from './decode-layout';
import { sharp } from './decode-sharp';
import { hasStrayBytes, isHarmless, withoutStrayBytes } from './decode-tolerance';
import { ownValues } from './decode-values';
import { Extra, Photometric } from './header/tiff-space';
import { UnreadableError } from './header/unreadable';
import { MOST_PIXELS } from './most-pixels';
import type { Header, Samples } from './types';

/** More decoded bytes than this would starve the machine: about 250 megapixels of 16-bit RGB. */
const MOST_BYTES = 3 * 512 * 2 ** 20;

interface Raw {
  data: Channels;
  /** Channels a pixel as decoded. */
  step: number;
  width: number;
  height: number;
}

/**
 * The exact stored channels of the page that `header` describes.
 * @param input the file's bytes, or its path where it is too large to hold
 * @throws UnreadableError
 */
export async function decode(input: Buffer | string, header: Header): Promise<Samples> {
  refuseGiants(header);
  if (header.impossible) throw decodeError(new Error('truncated'), header);
  const bare = isBare(header) && typeof input !== 'string' ? bareSamples(input, header) : null;
  if (bare) return bare;
  try {
    return arrange(await tolerantly(input, header), header);
  } catch (error) {
    throw decodeError(error, header);
  }
}

/** Whether `decode` must be given the file's bytes and not its path. */
export function needsBytes(header: Header): boolean {
  return readsAnotherWay(header) || isBare(header);
}

/** Whether the stored layout is decoded by way of another, because the decoder itself would lose or change values. */
export function readsAnotherWay(header: Header): boolean {
  return changedTags(header).length > 0;
}

function refuseGiants({ width, height, channels, alpha, spots, bits, format }: Header): void {
  const megapixels = Math.round((width * height) / 1e6);
  const size = { width, height };
  if (width * height > MOST_PIXELS)
    throw new UnreadableError(
      'too-large',
      `The picture has ${megapixels} megapixels; the limit is ${Math.floor(MOST_PIXELS / 1e6)}. Save it smaller: no print in a book shows so many.`,
      format,
      size,
    );
  const bytes = width * height * (channels + spots + (alpha ? 1 : 0)) * Math.max(1, bits / 8);
  if (bytes > MOST_BYTES)
    throw new UnreadableError(
      'too-large',
      `The picture takes ${Math.round(bytes / 2 ** 20)} MB when decoded; the limit is ${MOST_BYTES / 2 ** 20}. Save it with 8 bits a channel, or smaller.`,
      format,
      size,
    );
}

/** Tags to decode by, where the stored ones would change values: indices, Lab bytes and premultiplied colours come out bare. */
function changedTags({ tiff, palette, bits, alpha, sample }: Header): { at: number; value: number }[] {
  if (!tiff) return [];
  if (palette) return [{ at: tiff.photometricAt, value: Photometric.blackIsZero }];
  if (tiff.photometric === Photometric.cielab && bits === 8)
    return [{ at: tiff.photometricAt, value: Photometric.icclab }];
  if (alpha && sample === 'uint' && tiff.extra[0] === Extra.associated)
    return [{ at: tiff.extraAt, value: Extra.unassociated }];
  return [];
}

function withTags(input: Buffer | string, header: Header): Buffer | string {
  const tags = changedTags(header);
  if (tags.length === 0) return input;
  if (typeof input === 'string') throw new Error('this layout is decoded from bytes');
  // the caller's bytes are hashed and read for other pages too
  const copy = Buffer.from(input);
  for (const { at, value } of tags)
    if (header.tiff?.bigEndian) copy.writeUInt16BE(value, at);
    else copy.writeUInt16LE(value, at);
  return copy;
}

/** A second attempt where the first failed over what no pixel depends on. */
async function tolerantly(input: Buffer | string, header: Header): Promise<Raw> {
  try {
    const found = await raw(input, header, 'warning');
    if (header.format === 'jpeg') await refuseOverwritten(bytesOf(input), header);
    return found;
  } catch (error) {
    const { message } = error as Error;
    if (header.format === 'tiff' && isHarmless(message)) return await raw(input, header, 'error');
    if (header.format === 'jpeg' && hasStrayBytes(message) && typeof input !== 'string')
      return await raw(withoutStrayBytes(input), header, 'warning');
    throw error;
  }
}

const bytesOf = (input: Buffer | string) => (typeof input === 'string' ? readFileSync(input) : input);

async function raw(input: Buffer | string, header: Header, failOn: 'warning' | 'error'): Promise<Raw> {
  const options = {
    failOn,
    ignoreIcc: true,
    autoOrient: false,
    limitInputChannels: 32,
    ...(header.format === 'tiff' ? { page: header.page - 1 } : {}),
  };
  const image = sharp(withTags(input, header), options);
  const warnings: string[] = [];
  image.on('warning', (text: string) => warnings.push(text));
  const meta = await image.metadata();
  if (!meta.space || !meta.depth) throw new Error('the decoder does not say what it reads');
  // without the stored space sharp converts to sRGB; one-channel grey would lose its alpha, three equal ones keep it
  const grey = meta.space === 'b-w' && header.alpha;
  image.toColourspace(grey ? 'srgb' : meta.space);
  if (meta.space === 'cmyk') image.pipelineColourspace('cmyk');
  const { data, info } = await image.raw({ depth: meta.depth }).toBuffer({ resolveWithObject: true });
  if (failOn === 'error' && !isHarmless(['', ...warnings].join('\n'))) throw new Error(warnings.join('\n'));
  const { width, height } = info;
  const values = ownValues(data, meta.depth);
  const step = values.length / (width * height);
  if (grey && step === 4) return { data: keepChannels(values, 4, 1, 3), step: 2, width, height };
  return { data: values, step, width, height };
}

/** From what the decoder gives to what `Samples` promises. */
function arrange(decoded: Raw, header: Header): Samples {
  const { width, height } = decoded;
  if (width !== header.width || height !== header.height)
    throw new Error(
      `the header says ${header.width} x ${header.height}, the pixels are ${width} x ${height}`,
    );
  if (header.palette && header.tiff) return paletteSamples(decoded, header);
  const channels = header.channels as Samples['channels'];
  if (decoded.step < channels) throw new Error(`${decoded.step} channels where the header says ${channels}`);
  // a transparent colour or a frame that does not fill its canvas shows only when decoded
  const alpha = header.tiff ? header.alpha && decoded.step > channels : decoded.step > channels;
  const step = channels + (alpha ? 1 : 0);
  const data = keepChannels(decoded.data, decoded.step, channels, alpha ? channels : -1);
  if (header.space === 'lab')
    return { width, height, channels, alpha, space: 'lab', data: labOf(data, header, step) };
  if (data instanceof Uint16Array && header.bits < 16 && header.bits > 8) spread(data, header.bits);
  if (alpha && readsAnotherWay(header)) unpremultiply(data as Uint8Array | Uint16Array, step);
  // the decoder turns min-is-white round itself, but not where the samples are floats
  if (header.inverted && header.format === 'jpeg') invert(data, step, channels, 255);
  if (header.inverted && header.sample === 'float') invert(data, step, channels, 1);
  return { width, height, channels, alpha, space: header.space, data };
}

function paletteSamples({ data, step, width, height }: Raw, header: Header): Samples {
  const indices = keepChannels(data as Uint8Array, step, 1);
  const map = header.tiff!.colorMap;
  const bits = Math.log2(map.length / 3);
  if (!(data instanceof Uint8Array) || ![1, 2, 4, 8].includes(bits))
    throw new Error('the palette is damaged');
  return { width, height, channels: 3, alpha: false, space: 'rgb', data: applyPalette(indices, bits, map) };
}

function labOf(data: Channels, header: Header, step: number): Int16Array {
  if (data instanceof Int16Array) return data;
  if (data instanceof Float32Array) return labFromFloats(data, step);
  if (data instanceof Uint16Array) return labFromWords(data, step);
  return labFromBytes(data, header.tiff?.photometric === Photometric.icclab ? 'icclab' : 'cielab', step);
}
