import type { PictureFacts } from '../shared/picture';
import type { Content } from '../shared/reader-protocol';
import { decode, needsBytes } from './decode';
import { factsOf } from './facts';
import { readHeaders, UnreadableError } from './header';
import { readingOf } from './meaning';
import type { Reading } from './meaning/types';
import { type OnSize, type OpenPicture, openPicture } from './open';
import type { Header, Samples } from './types';
import { unreadableFacts } from './unreadable-facts';

/** One page of a file, with all of its stored values and what they mean. */
export interface DecodedPage {
  header: Header;
  samples: Samples;
  reading: Reading;
}

/**
 * Everything that is known of a content: one entry a page, in order. What cannot be read is an entry too (`unreadable`);
 * this never throws for what it is.
 * @param onSize told how large the task is, as soon as that is known
 * @param onPage given every page as it was decoded, for whoever has another use for it
 * @throws OtherContent
 */
export async function readFacts(
  content: Content,
  onSize?: OnSize,
  onPage?: (page: DecodedPage) => void,
): Promise<PictureFacts[]> {
  let file: OpenPicture | null = null;
  try {
    file = openPicture(content, onSize);
    return await factsOfOpen(file, onSize, onPage);
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return [unreadableFacts(error, file?.sha256() ?? content.sha256 ?? '')];
  } finally {
    file?.close();
  }
}

/** The same of a picture that is open already, and stays so. @throws UnreadableError where nothing of it is known */
export async function factsOfOpen(
  file: OpenPicture,
  onSize?: OnSize,
  onPage?: (page: DecodedPage) => void,
): Promise<PictureFacts[]> {
  const headers = readHeaders(file.source);
  onSize?.(file.source.size, megapixelsOf(headers));
  const pages: PictureFacts[] = [];
  for (const header of headers) pages.push(await pageFacts(file, header, onPage));
  return pages;
}

async function pageFacts(
  file: OpenPicture,
  header: Header | UnreadableError,
  onPage?: (page: DecodedPage) => void,
): Promise<PictureFacts> {
  if (header instanceof UnreadableError) return unreadableFacts(header, file.sha256());
  try {
    const samples = await decode(needsBytes(header) ? file.bytes() : file.input, header);
    const reading = await readingOf(header);
    const facts = factsOf(samples, header, reading);
    onPage?.({ header, samples, reading });
    if (!facts.tone) throw nothingToPrint(header);
    return { ...facts, page: header.page, sha256: file.sha256() };
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    return unreadableFacts(error, file.sha256(), header);
  }
}

/** No encoding, profile or tone matters where no pixel is seen, so no advice on these may be given. */
function nothingToPrint(header: Header): UnreadableError {
  const text = 'All of its pixels are transparent: nothing of it would print. Export it again.';
  return new UnreadableError('empty', text, header.format, header);
}

/** Of all pages that can be read: so much has to be decoded. */
export function megapixelsOf(headers: (Header | UnreadableError)[]): number {
  return headers.reduce((sum, h) => sum + (h instanceof UnreadableError ? 0 : h.width * h.height), 0) / 1e6;
}
