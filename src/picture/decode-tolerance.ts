import { bufferSource } from './header';
import { segments } from './header/jpeg';

/**
 * By default the decoder refuses a picture at its first warning, which is right for pixels and wrong for a date without
 * an end mark. These warnings of the TIFF library concern tags that no pixel depends on.
 */
const HARMLESS = [
  /^ASCII value for tag .* (does not end in null byte|contains null byte)/,
  /^Unknown field with tag/,
  /^Incompatible type for "(?!Strip|Tile|Image|Bits|Samples|Photometric|Compression|Planar|Color|Extra)/,
  /tags are not sorted in ascending order/,
  /^Read (of|error).*ignor.*custom directory/i,
];
/** Lines that only frame the warnings. */
const FRAME = /^(Warning treated as error|error in tile|read gave \d+ warnings|$)/;

/** Whether a decode failed over warnings only, all of them harmless: it may be tried again without that care. */
export function isHarmless(message: string): boolean {
  const lines = message.split('\n').map(line => line.trim());
  return lines.length > 1 && lines.every(line => FRAME.test(line) || HARMLESS.some(p => p.test(line)));
}

/** Whether a JPEG was refused over stray bytes between its header's segments, which its pixels do not depend on. */
export function hasStrayBytes(message: string): boolean {
  return /extraneous bytes before marker 0x(c|d[b-f]|da|e|fe)/i.test(message);
}

/** The same JPEG without stray bytes between the segments of its header. */
export function withoutStrayBytes(bytes: Buffer): Buffer {
  const parts = [bytes.subarray(0, 2)];
  let end = 2;
  for (const segment of segments(bufferSource(bytes))) {
    parts.push(bytes.subarray(segment.start, segment.end));
    end = segment.end;
  }
  return Buffer.concat([...parts, bytes.subarray(end)]);
}
