import type { PictureFacts } from '../shared/picture';
import { decode, needsBytes } from './decode';
import { factsOf } from './facts';
import { readHeaders, UnreadableError } from './header';
import { type OpenPicture, openPicture } from './open';
import { openProfile } from './profile';
import type { Header } from './types';

/**
 * Everything that is known of a file: one entry a page, in order. What cannot be read is an entry too (`unreadable`);
 * this never throws for what a file holds.
 * @param onSize told the file's megapixels, all pages together, once its header is read
 */
export async function readFacts(
  path: string,
  known?: string,
  onSize?: (megapixels: number) => void,
): Promise<PictureFacts[]> {
  let file: OpenPicture | null = null;
  try {
    file = openPicture(path, known);
    const headers = readHeaders(file.source);
    onSize?.(headers.reduce((sum, h) => sum + (h instanceof UnreadableError ? 0 : h.width * h.height), 0) / 1e6);
    const pages: PictureFacts[] = [];
    for (const header of headers) pages.push(await pageFacts(file, header));
    return pages;
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return [unreadableFacts(error, file?.sha256 ?? known ?? '')];
  } finally {
    file?.close();
  }
}

async function pageFacts(file: OpenPicture, header: Header | UnreadableError): Promise<PictureFacts> {
  if (header instanceof UnreadableError) return unreadableFacts(header, file.sha256);
  try {
    const samples = await decode(needsBytes(header) ? file.bytes() : file.input, header);
    return { ...factsOf(samples, header, openProfile(header.icc)), page: header.page, sha256: file.sha256 };
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return unreadableFacts(error, file.sha256, header);
  }
}

/** Facts of what could not be read: the header's, as far as there are any, and why. */
export function unreadableFacts(error: UnreadableError, sha256: string, header?: Header): PictureFacts {
  return {
    page: header?.page ?? error.page,
    sha256,
    format: error.format,
    width: error.size.width,
    height: error.size.height,
    channels: header?.channels ?? 0,
    bits: header?.bits ?? 0,
    alpha: header?.alpha ?? false,
    palette: header?.palette ?? false,
    space: header?.space ?? null,
    encoding: 'unreadable',
    profile: null,
    assumed: null,
    ppi: header?.ppi ?? null,
    orientation: header?.orientation ?? 1,
    levels: [],
    chroma: null,
    ink: null,
    tone: null,
    zones: [],
    remarks: header?.remarks ?? [],
    unreadable: { reason: error.reason, text: error.text },
  };
}
