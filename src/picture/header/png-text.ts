import { inflateSync } from 'node:zlib';
import { LONGEST_FIELD } from './source';

/** The keyword under which a PNG keeps its XMP packet (XMP part 3, section 1.1.5). */
export const XMP_KEYWORD = 'XML:com.adobe.xmp';

/** A text chunk of a PNG (PNG third edition, section 11.3.3), unpacked. */
export interface PngText {
  keyword: string;
  bytes: Buffer;
  /** Else Latin-1, if its writer kept to the standard. */
  utf8: boolean;
}

export const isText = (type: string): boolean => type === 'tEXt' || type === 'zTXt' || type === 'iTXt';

/** @returns null where the chunk is damaged, or unpacks to more than anybody means */
export function pngText(type: string, body: Buffer): PngText | null {
  const end = body.indexOf(0);
  if (end < 1) return null;
  const keyword = body.toString('latin1', 0, end);
  if (type === 'tEXt') return { keyword, bytes: body.subarray(end + 1), utf8: false };
  if (type === 'zTXt') {
    const bytes = inflated(body.subarray(end + 2));
    return bytes && { keyword, bytes, utf8: false };
  }
  // flag, method, language, translated keyword
  const language = body.indexOf(0, end + 3);
  const translated = language < 0 ? -1 : body.indexOf(0, language + 1);
  if (translated < 0) return null;
  const text = body.subarray(translated + 1);
  const bytes = body[end + 1] === 0 ? text : inflated(text);
  return bytes && { keyword, bytes, utf8: true };
}

function inflated(bytes: Buffer): Buffer | null {
  try {
    return inflateSync(bytes, { maxOutputLength: LONGEST_FIELD });
  } catch {
    return null;
  }
}
