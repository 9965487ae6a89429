import { isUtf8 } from 'node:buffer';

/** A text as it lies in its file, and the way back to the very same bytes. */
export interface FileText {
  /** A byte order mark stays in it, as its first character. */
  text: string;
  /** Bytes of a changed text; null where this file's encoding has no sign for something in it. */
  encode(text: string): Buffer | null;
}

/**
 * UTF-8, UTF-16 with its byte order mark, or else bytes that stand for themselves (ISO 8859-1), which gives every
 * other encoding back as it was.
 */
export function fileText(bytes: Buffer): FileText {
  if (bytes.length % 2 === 0) {
    const mark = bytes.length >= 2 ? bytes.readUInt16BE(0) : 0;
    if (mark === 0xfffe)
      return { text: bytes.toString('utf16le'), encode: text => Buffer.from(text, 'utf16le') };
    if (mark === 0xfeff)
      return {
        text: Buffer.from(bytes).swap16().toString('utf16le'),
        encode: text => Buffer.from(text, 'utf16le').swap16(),
      };
  }
  if (isUtf8(bytes)) return { text: bytes.toString('utf8'), encode: text => Buffer.from(text, 'utf8') };
  return {
    text: bytes.toString('latin1'),
    encode: text => (/[^\0-\xff]/.test(text) ? null : Buffer.from(text, 'latin1')),
  };
}
