import fs from 'node:fs';
import { factsOf } from '../picture/facts';
import type { Header } from '../picture/types';
import type { Encoding } from '../shared/picture';
import type { RemedyFormat, RemedyProof, RemedyResult, RemedyWish, SourceFacts } from '../shared/remedy';
import { encode } from './encode';
import type { Stored } from './encode/stored';
import { fileBytes } from './file';
import { formatOf } from './format';
import type { TonePlane } from './grey/plane';
import { intended } from './intended';
import { type Carried, carriedFrom, upright, withRecord } from './metadata';
import { differenceOf } from './proof';
import { RemedyError } from './remedy-error';
import { type ReadPicture, readPicture } from './source';
import { lossWords, offWords, parametersOf, sourceWords, storedWords } from './words';

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
  const { plane, stored, carried, format, from, fromEncoding, told } = await made(file, wish, known);
  const written = await fileBytes(stored, format, wish.quality, carried);
  try {
    writeFlushed(temp, written.bytes);
    const proof = await proved(temp, plane, stored, format, wish);
    return {
      from,
      fromEncoding,
      format,
      bits: stored.bits,
      width: stored.width,
      height: stored.height,
      proof,
      told: [
        ...told,
        ...written.told,
        ...(format === 'jpeg' ? [lossWords(wish.quality, proof)] : []),
        ...offWords(proof.maxError, stored, format),
        ...foundWords(proof, wish),
      ],
    };
  } catch (error) {
    fs.rmSync(temp, { force: true });
    throw error;
  }
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
  told: string[];
}

/**
 * Everything that needs the source, which is large and is let go with this.
 * @throws RemedyError in plain sentences where the picture cannot be converted
 */
export async function made(file: string, wish: RemedyWish, known: SourceFacts | null): Promise<Made> {
  const source = await readPicture(file);
  const { header, samples, reading, sha256 } = source;
  const format = formatOf(header.format, wish);
  const asked: RemedyWish = format === 'jpeg' ? { ...wish, bits: 8 } : wish;
  const facts = known?.sha256 === sha256 ? known : factsOf(samples, header, reading);
  const { plane, told, black } = intended(source, facts, asked, format);
  const stored = await encode(plane, asked, header.bits);
  return {
    plane,
    stored,
    carried: carriedAlong(source, asked, stored, black),
    format,
    from: sha256,
    fromEncoding: facts.encoding,
    header,
    told: [...sourceWords(source), ...told, ...storedWords(stored, wish, format, header)],
  };
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
    toned: wish.to === 'rgb-toned',
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
async function proved(
  temp: string,
  plane: TonePlane,
  stored: Stored,
  format: RemedyFormat,
  wish: RemedyWish,
): Promise<RemedyProof> {
  const { header, samples, reading, sha256, bytes } = await readPicture(temp);
  if (format !== 'jpeg' && !equal(samples.data, stored.data))
    throw new RemedyError(
      'The written file did not read back as it was written: its disk may be failing. The picture itself was not touched.',
    );
  const { encoding } = factsOf(samples, header, reading);
  if (mustBeFound(wish) && encoding !== wish.to)
    throw new RemedyError(
      `The result would be found to be ${encoding}, not ${wish.to} as was asked: nothing was kept. Convert to another encoding or format.`,
    );
  return { encoding, ...differenceOf(plane, samples, reading.meaning), sha256, bytes: bytes.length };
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
