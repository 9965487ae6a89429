import fs from 'node:fs';
import { factsOf } from '../picture/facts';
import { bufferSource } from '../picture/header';
import type { Header } from '../picture/types';
import type { Encoding } from '../shared/picture';
import type {
  Moved,
  RemedyFormat,
  RemedyProof,
  RemedyResult,
  RemedyWish,
  SourceFacts,
} from '../shared/remedy';
import { encode, lostInJpeg } from './encode';
import type { Stored } from './encode/stored';
import { codedJpeg, fileBytes } from './file';
import { codedPart } from './file/jpeg';
import { luminanceApart } from './file/lossless-jpeg';
import { formatOf } from './format';
import type { TonePlane } from './grey/plane';
import { intended } from './intended';
import { luminanceStays, storesLuminance } from './luminance';
import { type Carried, carriedFrom, upright, withRecord } from './metadata';
import { found } from './proof';
import { RemedyError } from './remedy-error';
import { type ReadPicture, readPicture } from './source';
import { tintOf } from './wish';
import { anewWords, offWords, parametersOf, sourceWords, stayedWords, storedWords } from './words';

/**
 * Makes what is wished of a picture and writes it, flushed, to `temp`; then reads that file again and proves it.
 * @param file is only read
 * @param known what was read of the picture before: taken as long as its content is the same, which saves a walk over it
 * @throws RemedyError in plain sentences where the picture cannot be converted, or the written file is not what was
 *   intended; the file system's own errors (a full disk) as they are. `temp` is then gone.
 */
export async function remedyPicture(
  file: string,
  temp: string,
  wish: RemedyWish,
  known: SourceFacts | null = null,
): Promise<RemedyResult> {
  const result = await made(file, wish, known);
  const { stored, format, from, fromEncoding, told } = result;
  try {
    const kept = await writtenAsCoded(temp, result, wish);
    if (!kept && format === 'jpeg' && wish.format === null && wish.quality === null)
      throw new RemedyError(RARELY_CODED);
    const written = kept ?? (await writtenAnew(temp, result, wish));
    return {
      from,
      fromEncoding,
      format,
      bits: stored.bits,
      width: stored.width,
      height: stored.height,
      proof: written.proof,
      moved: result.moved,
      told: [
        ...told,
        ...written.told,
        ...offWords(written.proof.maxError, stored, format),
        ...foundWords(written.proof, wish),
      ],
    };
  } catch (error) {
    fs.rmSync(temp, { force: true });
    throw error;
  }
}

const RARELY_CODED =
  'The JPEG is coded in a rare way, and its tones cannot stay as they are coded. Name the format of the result: TIFF is exact, JPEG rounds.';

/** The most that a result may be off what was intended, in L*. */
const MOST_OFF = 0.5;

interface Proven {
  proof: RemedyProof;
  told: string[];
}

/** With the luminance as it is coded in the source; null where that cannot be, or is not what was intended. */
async function writtenAsCoded(temp: string, result: Made, wish: RemedyWish): Promise<Proven | null> {
  const { stored, carried, header } = result;
  const coded = result.luminance?.();
  if (!coded) return null;
  const { bytes, told } = codedJpeg(coded, stored, carried);
  writeFlushed(temp, bytes);
  const proof = await proved(temp, result, wish);
  if (proof.maxError > MOST_OFF) return null;
  return { proof, told: [...told, stayedWords(stored, header, result.fromEncoding === wish.to)] };
}

async function writtenAnew(temp: string, result: Made, wish: RemedyWish): Promise<Proven> {
  const { stored, format, carried } = result;
  const lost = format === 'jpeg' ? await lostInJpeg(wish.greyProfile) : null;
  if (lost) throw new RemedyError(lost);
  const quality = wish.quality ?? 100;
  const { bytes, told } = await fileBytes(stored, format, quality, carried);
  writeFlushed(temp, bytes);
  const proof = await proved(temp, result, wish);
  return { proof, told: format === 'jpeg' ? [...told, anewWords(quality)] : told };
}

/** A result before it is a file. */
interface Made {
  plane: TonePlane;
  stored: Stored;
  carried: Carried;
  format: RemedyFormat;
  from: string;
  fromEncoding: Encoding;
  /** Of the source. */
  header: Header;
  /** The source's luminance as it is coded, where that may be the result's; null where it cannot. */
  luminance: (() => Buffer | null) | null;
  moved: Moved | null;
  told: string[];
}

/**
 * Everything that needs the source, which is large and is let go with this.
 * @throws RemedyError in plain sentences where the picture cannot be converted
 */
export async function made(file: string, wish: RemedyWish, known: SourceFacts | null): Promise<Made> {
  const source = await readPicture(file);
  const { header, samples, reading, sha256 } = source;
  const facts = known?.sha256 === sha256 ? known : factsOf(samples, header, reading);
  const promised = await storesLuminance(bufferSource(source.bytes), header, reading, wish.greyProfile);
  const stays = luminanceStays(promised, { ...facts, orientation: header.orientation }, wish);
  const format = formatOf(header.format, wish, stays === 'surely');
  const asked: RemedyWish = format === 'jpeg' ? { ...wish, bits: 8 } : wish;
  const { plane, told, black, moved } = intended(source, facts, asked, format);
  const stored = await encode(plane, asked, header.bits);
  return {
    plane,
    stored,
    carried: carriedAlong(source, asked, stored, black),
    format,
    from: sha256,
    fromEncoding: facts.encoding,
    header,
    luminance:
      stays !== 'no' && format === 'jpeg' ? luminanceOf(source, stored, facts.encoding === wish.to) : null,
    moved,
    told: [...sourceWords(source), ...told, ...storedWords(stored, wish, format, header, stays)],
  };
}

/** Holds on to the file alone, not to its pixels. @param isRight what is coded can stay to the byte */
function luminanceOf({ bytes }: ReadPicture, { space }: Stored, isRight: boolean): () => Buffer | null {
  if (isRight) return () => codedPart(bytes);
  return () => luminanceApart(bytes, space === 'grey' ? 1 : 3);
}

function carriedAlong(
  { bytes, header, sha256 }: ReadPicture,
  wish: RemedyWish,
  stored: Stored,
  black: string | null,
): Carried {
  const carried = carriedFrom(bytes, header);
  return withRecord(wish.upright ? upright(carried) : carried, {
    from: sha256,
    to: wish.to,
    ...tintOf(wish),
    parameters: parametersOf(wish, stored.bits, black),
  });
}

function writeFlushed(temp: string, bytes: Uint8Array): void {
  const fd = fs.openSync(temp, 'w');
  try {
    for (let at = 0; at < bytes.length; ) at += fs.writeSync(fd, bytes, at);
    fs.fsyncSync(fd);
  } finally {
    fs.closeSync(fd);
  }
}

/** Reads the written file as any picture is read, and holds it against what was intended. */
async function proved(temp: string, { plane, stored, format }: Made, wish: RemedyWish): Promise<RemedyProof> {
  const read = await readPicture(temp);
  const { sha256, bytes } = read;
  if (format !== 'jpeg' && !equal(read.samples.data, stored.data))
    throw new RemedyError(
      'The written file did not read back as it was written: its disk may be failing. The picture itself was not touched.',
    );
  const { encoding, ...difference } = found(plane, read);
  if (mustBeFound(wish) && encoding !== wish.to)
    throw new RemedyError(
      `The result was found to be ${encoding}, not ${wish.to} as was asked, and was not kept. Convert to another encoding or format.`,
    );
  return { encoding, ...difference, sha256, bytes: bytes.length };
}

function equal(read: ArrayBufferView, written: ArrayBufferView): boolean {
  const bytes = (view: ArrayBufferView) => Buffer.from(view.buffer, view.byteOffset, view.byteLength);
  return bytes(read).equals(bytes(written));
}

/** A tone can be too faint to count as one, and colour that stays is whatever it is. */
const mustBeFound = ({ to, below }: RemedyWish) =>
  to !== 'rgb-toned' && (to !== 'rgb-neutral' || below === null);

function foundWords({ encoding }: RemedyProof, wish: RemedyWish): string[] {
  if (mustBeFound(wish) || encoding === wish.to) return [];
  return [
    wish.to === 'rgb-toned'
      ? `The tone is too faint to count as one: the result is found to be ${encoding}.`
      : `Colour that is stronger was kept, as asked: the result is found to be ${encoding}.`,
  ];
}
