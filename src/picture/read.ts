import type { PictureFacts } from '../shared/picture';
import { decode, needsBytes } from './decode';
import { factsOf } from './facts';
import { readHeaders, UnreadableError } from './header';
import { readingOf } from './meaning';
import { type OnSize, type OpenPicture, openPicture } from './open';
import type { Header } from './types';
import { unreadableFacts } from './unreadable-facts';

/**
 * Everything that is known of a file: one entry a page, in order. What cannot be read is an entry too (`unreadable`);
 * this never throws for what a file holds.
 * @param known the content's SHA-256 where the caller has it, which saves the hashing
 * @param onSize told how large the task is, as soon as that is known
 */
export async function readFacts(path: string, known?: string, onSize?: OnSize): Promise<PictureFacts[]> {
  let file: OpenPicture | null = null;
  try {
    file = openPicture(path, known, onSize);
    const headers = readHeaders(file.source);
    onSize?.(file.source.size, megapixelsOf(headers));
    const pages: PictureFacts[] = [];
    for (const header of headers) pages.push(await pageFacts(file, header));
    return pages;
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return [unreadableFacts(error, file?.sha256() ?? known ?? '')];
  } finally {
    file?.close();
  }
}

async function pageFacts(file: OpenPicture, header: Header | UnreadableError): Promise<PictureFacts> {
  if (header instanceof UnreadableError) return unreadableFacts(header, file.sha256());
  try {
    const samples = await decode(needsBytes(header) ? file.bytes() : file.input, header);
    return { ...factsOf(samples, header, await readingOf(header)), page: header.page, sha256: file.sha256() };
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return unreadableFacts(error, file.sha256(), header);
  }
}

function megapixelsOf(headers: (Header | UnreadableError)[]): number {
  return headers.reduce((sum, h) => sum + (h instanceof UnreadableError ? 0 : h.width * h.height), 0) / 1e6;
}
