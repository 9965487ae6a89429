import { createHash } from 'node:crypto';
import type { Shown } from '../shared/reader-protocol';
import { decode, needsBytes } from './decode';
import { readHeaders, UnreadableError } from './header';
import { type OnSize, openPicture } from './open';
import { megapixelsOf } from './read';
import type { Header, Samples } from './types';

/**
 * A short name of the pixels of every page, in order: two pages of one name have the same values at the same places,
 * stored in the same channels; how they are packed, and what is said of them, does not matter. Null where a page cannot
 * be read.
 * @returns SHA-256, hex
 * @throws UnreadableError
 */
export async function pixelDigests(content: Shown, onSize?: OnSize): Promise<(string | null)[]> {
  const opened = openPicture({ ...content, sha256: '' }, onSize);
  try {
    const headers = readHeaders(opened.source);
    onSize?.(opened.source.size, megapixelsOf(headers));
    const digests: (string | null)[] = [];
    for (const header of headers)
      digests.push(
        header instanceof UnreadableError
          ? null
          : await digestOf(header, needsBytes(header) ? opened.bytes() : opened.input),
      );
    return digests;
  } finally {
    opened.close();
  }
}

async function digestOf(header: Header, input: Buffer | string): Promise<string | null> {
  try {
    return digest(await decode(input, header));
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return null;
  }
}

function digest({ width, height, channels, alpha, space, data }: Samples): string {
  const layout = [width, height, channels, alpha, space, data.BYTES_PER_ELEMENT];
  return createHash('sha256')
    .update(JSON.stringify(layout))
    .update(new Uint8Array(data.buffer, data.byteOffset, data.byteLength))
    .digest('hex');
}
