import { decode, needsBytes } from '../picture/decode';
import { readHeaders, UnreadableError } from '../picture/header';
import { readingOf } from '../picture/meaning';
import { type OnSize, type OpenPicture, openPicture } from '../picture/open';
import { type DecodedPage, readFacts } from '../picture/read';
import type { Header } from '../picture/types';
import type { PictureFacts } from '../shared/picture';
import { RemedyError } from './remedy-error';

/** A picture that is read for a remedy: one page, decoded. */
export interface ReadPicture extends DecodedPage {
  sha256: string;
  /** The whole file. */
  bytes: Buffer;
}

/** The page that was decoded last for its facts alone, and what file it was: a conversion mostly follows. */
let ahead: (DecodedPage & { sha256: string }) | null = null;

/** The same as `readFacts`; where the file is read for a remedy next, it need not be decoded again. */
export async function factsAhead(file: string, known?: string, onSize?: OnSize): Promise<PictureFacts[]> {
  ahead = null;
  const decoded: DecodedPage[] = [];
  const pages = await readFacts({ file, sha256: known }, onSize, page => {
    // no more than one is ever wanted, and several large ones would starve the machine
    decoded[0] = page;
  });
  const [{ sha256 }] = pages;
  if (pages.length === 1 && decoded.length === 1 && sha256) ahead = { ...decoded[0], sha256 };
  return pages;
}

/** What was decoded ahead, once, and only while the file still is the same. */
function takenAhead(sha256: string): DecodedPage | null {
  const page = ahead?.sha256 === sha256 ? ahead : null;
  ahead = null;
  return page;
}

/** @throws RemedyError in the reader's own words where the file cannot be read, or holds more pages than one */
export async function readPicture(path: string): Promise<ReadPicture> {
  let file: OpenPicture | null = null;
  try {
    file = openPicture({ file: path });
    const header = onlyPage(readHeaders(file.source));
    const bytes = file.bytes();
    const sha256 = file.sha256();
    const page = takenAhead(sha256) ?? (await decodedPage(file, header));
    return { ...page, sha256, bytes };
  } catch (error) {
    if (error instanceof UnreadableError) throw new RemedyError(error.text);
    throw error;
  } finally {
    file?.close();
  }
}

async function decodedPage(file: OpenPicture, header: Header): Promise<DecodedPage> {
  const samples = await decode(needsBytes(header) ? file.bytes() : file.input, header);
  return { header, samples, reading: await readingOf(header) };
}

function onlyPage(pages: (Header | UnreadableError)[]): Header {
  const [page, ...others] = pages;
  if (others.length > 0)
    throw new RemedyError(
      `The file holds ${pages.length} pages, and a conversion writes one: save the pages as files of their own first.`,
    );
  if (page instanceof UnreadableError) throw page;
  return page;
}
