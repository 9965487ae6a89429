// no-unit-test: test/layout/typst/index.test.ts and test/layout/relink.test.ts read strings by it
import { Mapped } from '../mapped';

const TOKEN = /\\u\{([0-9a-f]{1,6})\}|\\([\s\S])|[\s\S]/gi;
const LETTERS: Record<string, string> = { n: '\n', r: '\r', t: '\t' };

/** Undoes the escapes of a Typst string. */
export function typstUnescaped(written: Mapped): Mapped {
  const { text } = written;
  if (!text.includes('\\')) return written;
  return Mapped.build(add => {
    for (const { index, 0: token, 1: code, 2: letter } of text.matchAll(TOKEN)) {
      const point = code ? Number.parseInt(code, 16) : 0;
      const meant = code ? (point <= 0x10ffff ? String.fromCodePoint(point) : token) : (letter ?? token);
      add(LETTERS[letter] ?? meant, written.startAt(index), written.slice(index, index + token.length).end);
    }
  });
}
