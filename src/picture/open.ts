import { createHash, type Hash } from 'node:crypto';
import fs from 'node:fs';
import type { Content, Stretch } from '../shared/reader-protocol';
import { gitName } from './git-name';
import { bufferSource, fileSource, type Source, UnreadableError } from './header';
import { readFully, truncated } from './header/source';

/** A file opened for reading, never written to. */
export interface OpenPicture {
  source: Source;
  /** What the decoder gets: the bytes, or the path of a file too large to hold. */
  input: Buffer | string;
  /** SHA-256 of the content in hex, worked out when first asked for. */
  sha256(): string;
  /** The whole file in memory, for layouts that are decoded from bytes. */
  bytes(): Buffer;
  close(): void;
}

/** Told how large a task is: first the file (bytes, no pixels yet), then with the pixels of all its pages. */
export type OnSize = (bytes: number, megapixels: number) => void;

/**
 * Up to here a file is read once and decoded from memory. Beyond, hashing it piece by piece and decoding it from its
 * path costs less: the second reading comes from the system's cache, and no memory is filled for it.
 */
export const HELD = 8 << 20;
const CHUNK = 1 << 20;

/** The file holds another content than the one that was meant. */
export class OtherContent extends Error {
  override name = 'OtherContent';
}

/**
 * Opens regular files only and never waits on a pipe or a device.
 * @throws UnreadableError `missing`, `permission`, `not-a-file`, `empty`
 * @throws OtherContent
 */
export function openPicture(content: Content, onSize?: OnSize): OpenPicture {
  const { file } = content;
  try {
    refuseOthers(fs.statSync(file));
    const fd = fs.openSync(file, fs.constants.O_RDONLY | (fs.constants.O_NONBLOCK ?? 0));
    try {
      return opened(fd, content, onSize);
    } catch (error) {
      fs.closeSync(fd);
      throw error;
    }
  } catch (error) {
    if (error instanceof UnreadableError || error instanceof OtherContent) throw error;
    throw systemError(error as NodeJS.ErrnoException);
  }
}

function opened(fd: number, { file, stretch, oid, sha256: known }: Content, onSize?: OnSize): OpenPicture {
  const stats = fs.fstatSync(fd);
  refuseOthers(stats); // it may have been replaced since
  const size = stretch?.size ?? stats.size;
  if (size === 0) throw new UnreadableError('empty', 'The file is empty. Copy or export it again.');
  onSize?.(size, 0);
  if (stretch || size <= HELD) {
    const bytes = stretch ? stretchOf(fd, stretch) : fs.readFileSync(fd);
    if (oid !== undefined && gitName(oid, bytes.length).update(bytes).digest('hex') !== oid)
      throw new OtherContent();
    fs.closeSync(fd);
    return heldPicture(bytes, known);
  }
  if (oid !== undefined) known = hashIfNamed(fd, oid, size);
  let held: Buffer | null = null;
  return {
    source: fileSource(fd, size),
    input: file,
    sha256: () => (known ??= held ? sha256Of(held) : hashOf(fd)),
    bytes: () => (held ??= fs.readFileSync(file)),
    close: () => fs.closeSync(fd),
  };
}

function stretchOf(fd: number, { start, size }: Stretch): Buffer {
  const bytes = Buffer.allocUnsafe(size);
  if (readFully(fd, bytes, start) < size) throw truncated();
  return bytes;
}

/** SHA-256 of an open file that git calls `oid`, both worked out in one go. @throws OtherContent */
function hashIfNamed(fd: number, oid: string, size: number): string {
  const name = gitName(oid, size);
  const sha256 = hashOf(fd, name);
  if (name.digest('hex') !== oid) throw new OtherContent();
  return sha256;
}

/** A picture that is in memory, as one that was opened. */
export function heldPicture(bytes: Buffer, known?: string): OpenPicture {
  const sha256 = () => (known ??= sha256Of(bytes));
  return { source: bufferSource(bytes), input: bytes, sha256, bytes: () => bytes, close: () => {} };
}

const sha256Of = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

/** @param another is given the same bytes */
function hashOf(fd: number, another?: Hash): string {
  const hash = createHash('sha256');
  const chunk = Buffer.allocUnsafe(CHUNK);
  for (let at = 0, n = 0; (n = fs.readSync(fd, chunk, 0, CHUNK, at)) > 0; at += n) {
    const part = chunk.subarray(0, n);
    hash.update(part);
    another?.update(part);
  }
  return hash.digest('hex');
}

function refuseOthers(stats: fs.Stats): void {
  if (stats.isFile()) return;
  const kind = stats.isDirectory()
    ? 'a folder'
    : stats.isFIFO()
      ? 'a pipe'
      : stats.isSocket()
        ? 'a socket'
        : 'a device';
  throw new UnreadableError('not-a-file', `This is ${kind}, not a file. It was not opened.`);
}

function systemError(error: NodeJS.ErrnoException): UnreadableError {
  switch (error.code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return new UnreadableError('missing', 'There is no such file. Was it moved or renamed?');
    case 'ELOOP':
      return new UnreadableError(
        'missing',
        'The symbolic link leads round in a circle. Link to the file itself.',
      );
    case 'EACCES':
    case 'EPERM':
      return new UnreadableError(
        'permission',
        'The file may not be read. Give yourself the right to read it.',
      );
    case 'ENXIO':
      return new UnreadableError('not-a-file', 'This is a socket, not a file. It was not opened.');
    default:
      return new UnreadableError(
        'corrupt',
        `The file cannot be read from its disk (${error.code ?? error.message}). Copy it again from its source.`,
      );
  }
}
