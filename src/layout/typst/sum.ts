// no-unit-test: test/layout/typst/index.test.ts reads texts by it
import type { StringLiteral } from './code';

/** What a sum of strings is made of: a string as it stands, or what a name stands for. */
export type Part = StringLiteral | { name: string };

const PART = /\s*(?:"((?:[^"\\]|\\[\s\S])*)"|([\p{L}_][\p{L}\p{N}_-]*))\s*(\+|$)/uy;
/** Longer ones are no path. */
const LONGEST = 1000;

/** The parts of `"plates/" + name + ".jpg"` between two offsets; null where it is anything else. */
export function sumOf(text: string, { from, to }: StringLiteral): Part[] | null {
  if (to - from > LONGEST) return null;
  const sum = text.slice(from, to);
  const parts: Part[] = [];
  PART.lastIndex = 0;
  for (let found = PART.exec(sum); found; found = PART.exec(sum)) {
    const [whole, string, name, more] = found;
    if (name) parts.push({ name });
    else {
      const begins = from + found.index + whole.indexOf('"') + 1;
      parts.push({ from: begins, to: begins + string.length });
    }
    if (!more) return parts;
  }
  return null;
}
