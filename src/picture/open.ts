import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { bufferSource, fileSource, type Source, UnreadableError } from './header';

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
const HELD = 8 << 20;
const CHUNK = 1 << 20;

/**
 * Opens regular files only and never waits on a pipe or a device.
 * @param known the content's SHA-256 where the caller has it, which saves the hashing
 * @throws UnreadableError `missing`, `permission`, `not-a-file`, `empty`
 */
export function openPicture(path: string, known?: string, onSize?: OnSize): OpenPicture {
  try {
    refuseOthers(fs.statSync(path));
    const fd = fs.openSync(path, fs.constants.O_RDONLY | (fs.constants.O_NONBLOCK ?? 0));
    try {
      return opened(fd, path, known, onSize);
    } catch (error) {
      fs.closeSync(fd);
      throw error;
    }
  } catch (error) {
    throw error instanceof UnreadableError ? error : systemError(error as NodeJS.ErrnoException);
  }
}

function opened(fd: number, path: string, known?: string, onSize?: OnSize): OpenPicture {
  const stats = fs.fstatSync(fd);
  refuseOthers(stats); // it may have been replaced since
  if (stats.size === 0) throw new UnreadableError('empty', 'The file is empty. Copy or export it again.');
  onSize?.(stats.size, 0);
  if (stats.size <= HELD) {
    const bytes = fs.readFileSync(fd);
    fs.closeSync(fd);
    return heldPicture(bytes, known);
  }
  let held: Buffer | null = null;
  return {
    source: fileSource(fd, stats.size),
    input: path,
    sha256: () => (known ??= held ? sha256Of(held) : hashOf(fd)),
    bytes: () => (held ??= fs.readFileSync(path)),
    close: () => fs.closeSync(fd),
  };
}

/** A picture that is in memory, as one that was opened. */
export function heldPicture(bytes: Buffer, known?: string): OpenPicture {
  const sha256 = () => (known ??= sha256Of(bytes));
  return { source: bufferSource(bytes), input: bytes, sha256, bytes: () => bytes, close: () => {} };
}

const sha256Of = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

function hashOf(fd: number): string {
  const hash = createHash('sha256');
  const chunk = Buffer.allocUnsafe(CHUNK);
  for (let at = 0, n = 0; (n = fs.readSync(fd, chunk, 0, CHUNK, at)) > 0; at += n)
    hash.update(chunk.subarray(0, n));
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
