import { sharp } from '../../picture/decode-sharp';
import { bufferSource } from '../../picture/header';
import { segments } from '../../picture/header/jpeg';
import type { Stored } from '../encode/stored';
import type { Carried } from '../metadata/carried';
import { jpegMetadata } from './jpeg-metadata';
import { plainInks } from './plain-tiff';

/** Marker segments (ITU-T T.81, annex B). */
const START = Buffer.from([0xff, 0xd8]);
const APP0 = 0xe0;
const APP15 = 0xef;
const COMMENT = 0xfe;
/** The marker by which readers know which way inks are stored. */
const INK_MARKER = 0xee;

/**
 * A JPEG without chroma subsampling. 8 bits, no alpha.
 * @param quality 1-100
 */
export async function jpegBytes(stored: Stored, quality: number, carried: Carried): Promise<Buffer> {
  return jpegAround(codedPart(await encoded(stored, quality)), stored, carried);
}

/** What a JPEG has its pixels decoded from, to the byte: all of it but its beginning and the metadata. */
export function codedPart(file: Buffer): Buffer {
  const kept: Buffer[] = [];
  let end = START.length;
  for (const segment of segments(bufferSource(file))) {
    const own = segment.marker === INK_MARKER;
    const said = (segment.marker >= APP0 && segment.marker <= APP15) || segment.marker === COMMENT;
    if (own || !said) kept.push(file.subarray(segment.start, segment.end));
    end = segment.end;
  }
  return Buffer.concat([...kept, file.subarray(end)]);
}

/** A JPEG whose pixels are coded already: what stands behind the metadata, to the end. */
export const jpegAround = (coded: Buffer, stored: Pick<Stored, 'space' | 'icc'>, carried: Carried): Buffer =>
  Buffer.concat([START, ...jpegMetadata(stored, carried), coded]);

function encoded(stored: Stored, quality: number): Promise<Buffer> {
  const { data, width, height, space } = stored;
  const options = { quality, chromaSubsampling: '4:4:4' } as const;
  if (space === 'cmyk')
    return sharp(plainInks(stored), { ignoreIcc: true })
      .pipelineColourspace('cmyk')
      .toColourspace('cmyk')
      .jpeg(options)
      .toBuffer();
  const channels = space === 'grey' ? 1 : 3;
  return sharp(data, { raw: { width, height, channels } })
    .toColourspace(space === 'grey' ? 'b-w' : 'srgb')
    .jpeg(options)
    .toBuffer();
}
