import { MOST_PIXELS } from '../../../picture/most-pixels';
import { Unusual } from './unusual';
import { EDGE } from './zigzag';

/** A component of the frame (T.81, section B.2.2). */
export interface Component {
  id: number;
  /** Sampling factors: blocks of it in one MCU of an interleaved scan, across and down. */
  across: number;
  down: number;
  /** Which quantisation table. */
  table: number;
}

/** The frame header of a Huffman-coded JPEG of 8 bits, baseline, extended or progressive. */
export interface Frame {
  progressive: boolean;
  width: number;
  height: number;
  /** The first is luminance. */
  components: Component[];
  /** MCUs of an interleaved scan, across and down. */
  mcusAcross: number;
  mcusDown: number;
}

/** Frame markers by what they mean (T.81, table B.1); all others are arithmetic-coded, lossless or hierarchical. */
const BASELINE = 0xc0;
const EXTENDED = 0xc1;
const PROGRESSIVE = 0xc2;

/** Whether a marker begins a frame. */
export const isFrame = (marker: number): boolean =>
  marker >= BASELINE && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

/**
 * @param body of the segment, without marker and length
 * @throws Unusual where luminance does not stand by itself in full resolution, or is coded in a rare way
 */
export function frameOf(marker: number, body: Uint8Array): Frame {
  if (![BASELINE, EXTENDED, PROGRESSIVE].includes(marker)) throw new Unusual('coded in a rare way');
  const [precision, h1, h0, w1, w0, count] = body;
  const [width, height] = [w1 * 256 + w0, h1 * 256 + h0];
  if (precision !== 8 || ![1, 3].includes(count) || body.length !== 6 + count * 3)
    throw new Unusual('not 8 bits of grey or of three channels');
  if (width === 0 || height === 0) throw new Unusual('its height is told later');
  if (width * height > MOST_PIXELS) throw new Unusual('larger than is decoded');
  const components = Array.from({ length: count }, (_, i) => {
    const [id, sampling, table] = body.subarray(6 + i * 3);
    return { id, across: sampling >> 4, down: sampling & 15, table };
  });
  for (const { across, down, table } of components)
    if (across < 1 || across > 4 || down < 1 || down > 4 || table > 3) throw new Unusual('damaged');
  const [luminance] = components;
  // a single component is never interleaved, whatever its factors say
  if (count === 1) luminance.across = luminance.down = 1;
  if (components.some(({ across, down }) => across > luminance.across || down > luminance.down))
    throw new Unusual('luminance is stored smaller than colour');
  if (new Set(components.map(({ id }) => id)).size < count) throw new Unusual('damaged');
  return {
    progressive: marker === PROGRESSIVE,
    ...{ width, height, components },
    mcusAcross: Math.ceil(width / (EDGE * luminance.across)),
    mcusDown: Math.ceil(height / (EDGE * luminance.down)),
  };
}

/** Letters by which some writers name components that are red, green and blue. */
const RGB = [...'RGB'].map(letter => letter.charCodeAt(0));

/**
 * Whether the first component is the luminance of the picture (JFIF 1.02): grey, or YCbCr.
 * @param transform Adobe's; null without its marker
 */
export const isLuminance = ({ components }: Frame, transform: number | null): boolean =>
  components.length === 1 ||
  ((transform === null || transform === 1) && components.some(({ id }, i) => id !== RGB[i]));
