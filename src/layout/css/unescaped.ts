// no-unit-test: test/layout/css/index.test.ts and test/layout/relink.test.ts read escapes by it
import { Mapped } from '../mapped';

/** CSS Syntax 3, 4.3.7: a backslash with up to six hexadecimal digits and a space, a line end, or any character. */
const ESCAPE = /\\(?:([0-9a-f]{1,6})(?:\r\n|[ \t\n\r\f])?|(\r\n|[\n\r\f])|([\s\S]))/gi;

/** Undoes the escapes of a string or a URL. */
export function cssUnescaped(written: Mapped): Mapped {
  const { text } = written;
  if (!text.includes('\\')) return written;
  return Mapped.build(add => {
    let from = 0;
    const asIs = (to: number) => {
      for (let i = from; i < to; i++) add(text[i], written.startAt(i), written.slice(i, i + 1).end);
    };
    for (const { index, 0: token, 1: digits, 2: lineEnd, 3: character } of text.matchAll(ESCAPE)) {
      asIs(index);
      from = index + token.length;
      const meant = digits ? fromCode(Number.parseInt(digits, 16)) : lineEnd ? '' : character;
      add(meant, written.startAt(index), written.slice(index, from).end);
    }
    asIs(text.length);
  });
}

const fromCode = (code: number): string =>
  code === 0 || code > 0x10ffff || (code >= 0xd800 && code < 0xe000) ? '\uFFFD' : String.fromCodePoint(code);
