import { createHash } from 'node:crypto';

/**
 * One record a line: a checksum, a space, the text. A line that was torn by a kill or by a full disk does not match
 * its checksum and is nothing; the lines around it live on. Texts hold no line break.
 */
export function line(text: string): string {
  return `${checksum(Buffer.from(text))} ${text}\n`;
}

const CHECKSUM = 12;

const checksum = (bytes: Buffer) => createHash('sha1').update(bytes).digest('base64url').slice(0, CHECKSUM);

/** Where the texts of all lines lie, checked only when they are read. */
export function* spans(bytes: Buffer): Generator<{ start: number; end: number }> {
  for (let start = 0; start < bytes.length; ) {
    const found = bytes.indexOf(0x0a, start);
    const end = found === -1 ? bytes.length : found;
    if (end - start > CHECKSUM + 1) yield { start: start + CHECKSUM + 1, end };
    start = end + 1;
  }
}

/** The text of a span, or null where it is not what was written. */
export function textAt(bytes: Buffer, { start, end }: { start: number; end: number }): string | null {
  const text = bytes.subarray(start, end);
  const written = bytes.toString('latin1', start - CHECKSUM - 1, start - 1);
  return checksum(text) === written ? text.toString('utf8') : null;
}
