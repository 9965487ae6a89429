import fs from 'node:fs';
import { decode, needsBytes } from '../decode';
import { readHeader } from '../header';
import { readingOf } from '../meaning';
import type { Meaning } from '../meaning/types';
import { type OnSize, openPicture } from '../open';
import type { Header, Samples } from '../types';

/** A page with all of its stored values. */
export interface OpenPage {
  header: Header;
  samples: Samples;
  meaning: Meaning;
}

/** The page that was looked at last: who looks at a picture asks of it again and again. */
let kept: { key: string; page: OpenPage } | undefined;

/**
 * A page with all of its stored values; decoded again only where it is another, or its file has changed.
 * @param number from 1
 * @throws UnreadableError
 */
export async function openPage(path: string, number: number, onSize?: OnSize): Promise<OpenPage> {
  const key = keyOf(path, number);
  if (key && kept?.key === key) return kept.page;
  // the values of two large pages at a time would starve the machine
  kept = undefined;
  const file = openPicture({ file: path, sha256: '' }, onSize);
  try {
    const header = readHeader(file.source, number);
    onSize?.(file.source.size, (header.width * header.height) / 1e6);
    const samples = await decode(needsBytes(header) ? file.bytes() : file.input, header);
    const { meaning } = await readingOf(header);
    const page = { header, samples, meaning };
    // one that was written meanwhile is not kept
    if (key && keyOf(path, number) === key) kept = { key, page };
    return page;
  } finally {
    file.close();
  }
}

/** Nothing where there is no such file: opening it says why. */
function keyOf(path: string, number: number): string | undefined {
  const stats = fs.statSync(path, { bigint: true, throwIfNoEntry: false });
  return stats && [path, number, stats.size, stats.mtimeNs, stats.ctimeNs, stats.ino].join('\0');
}
