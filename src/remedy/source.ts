import { decode, needsBytes } from '../picture/decode';
import { readHeaders, UnreadableError } from '../picture/header';
import { readingOf } from '../picture/meaning';
import type { Reading } from '../picture/meaning/types';
import { type OpenPicture, openPicture } from '../picture/open';
import type { Header, Samples } from '../picture/types';
import { RemedyError } from './remedy-error';

/** A picture that is read for a remedy: one page, decoded. */
export interface ReadPicture {
  header: Header;
  samples: Samples;
  reading: Reading;
  sha256: string;
  /** The whole file. */
  bytes: Buffer;
}

/** @throws RemedyError in the reader's own words where the file cannot be read, or holds more pages than one */
export async function readPicture(path: string): Promise<ReadPicture> {
  let file: OpenPicture | null = null;
  try {
    file = openPicture(path);
    const header = onlyPage(readHeaders(file.source));
    const bytes = file.bytes();
    const samples = await decode(needsBytes(header) ? bytes : file.input, header);
    return { header, samples, reading: await readingOf(header), sha256: file.sha256(), bytes };
  } catch (error) {
    if (error instanceof UnreadableError) throw new RemedyError(error.text);
    throw error;
  } finally {
    file?.close();
  }
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
