/** Text whose writer did not say how: UTF-8 where it can be, else Latin-1. Zero bytes at its end are no text. */
export function textOf(bytes: Uint8Array): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    text = Buffer.from(bytes).toString('latin1');
  }
  return text.replace(/\0+$/, '');
}
