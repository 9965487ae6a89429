/** Names that PNG writers of long standing give to blocks that had no chunk of their own; common practice, no standard. */
const NAME = /^Raw profile type (exif|iptc|8bim|xmp|APP1)$/i;

/** @returns `exif`, `iptc`, ... or null where the keyword names no such block */
export const rawProfileOf = (keyword: string): string | null => NAME.exec(keyword)?.[1].toLowerCase() ?? null;

export const IPTC_KEYWORD = 'Raw profile type iptc';

/** Its bytes: a name, their number, and hexadecimal digits in lines. Null where that is not what stands there. */
export function rawProfileBytes(text: Buffer): Buffer | null {
  const lines = /^\n?[^\n]*\n\s*(\d{1,9})\s+([0-9a-fA-F\s]*)$/.exec(
    text.toString('latin1').replace(/\0+$/, ''),
  );
  if (!lines) return null;
  const bytes = Buffer.from(lines[2].replace(/\s+/g, ''), 'hex');
  return bytes.length === Number(lines[1]) ? bytes : null;
}

const DIGITS_A_LINE = 72;

export function rawProfileText(name: string, bytes: Buffer): string {
  const lines = bytes.toString('hex').match(new RegExp(`.{1,${DIGITS_A_LINE}}`, 'g')) ?? [];
  return `\n${name}\n${String(bytes.length).padStart(8)}\n${lines.join('\n')}\n`;
}
