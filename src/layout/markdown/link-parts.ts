// no-unit-test: test/layout/markdown/spec.test.ts runs every example of the specification through it
/** Parentheses in a destination may be nested so deep; CommonMark asks for three at least. */
const DEEPEST = 32;
const LONGEST_LABEL = 999;
const SPACES = /[ \t]*(?:\r\n?|\n)?[ \t]*/y;
const TITLE = /"(?:\\[\s\S]|[^"\\])*"|'(?:\\[\s\S]|[^'\\])*'|\((?:\\[\s\S]|[^()\\])*\)/y;
const LABEL = /\[((?:\\[\s\S]|[^[\]\\]){0,999})\]/y;
const ANGLE = /<((?:\\.|[^<>\n\r\\])*)>/y;

/** Behind spaces and at most one line end. */
export function spacesAt(text: string, at: number): number {
  SPACES.lastIndex = at;
  return SPACES.test(text) ? SPACES.lastIndex : at;
}

export interface Destination {
  from: number;
  to: number;
  /** Behind it, with its closing angle bracket. */
  next: number;
}

/** A link's destination, with or without angle brackets; null for none. */
export function destinationAt(text: string, at: number): Destination | null {
  if (text[at] === '<') {
    ANGLE.lastIndex = at;
    return ANGLE.test(text) ? { from: at + 1, to: ANGLE.lastIndex - 1, next: ANGLE.lastIndex } : null;
  }
  let depth = 0;
  let end = at;
  for (; end < text.length; end++) {
    const character = text[end];
    if (character <= ' ' || character === '\x7f') break;
    if (character === '\\' && /[!-/:-@[-`{-~]/.test(text[end + 1] ?? '')) end++;
    else if (character === '(' && ++depth > DEEPEST) return null;
    else if (character === ')' && --depth < 0) break;
  }
  return end > at && depth <= 0 ? { from: at, to: end, next: end } : null;
}

/** Behind a title, quotes included; null for none. */
export function titleAt(text: string, at: number): number | null {
  TITLE.lastIndex = at;
  return TITLE.test(text) ? TITLE.lastIndex : null;
}

/** A label in brackets, and where its bracket ends. */
export function labelAt(text: string, at: number): { label: string; to: number } | null {
  if (text[at] !== '[') return null;
  LABEL.lastIndex = at;
  const match = LABEL.exec(text);
  return match && match[1].length <= LONGEST_LABEL
    ? { label: match[1].trim() && match[1], to: LABEL.lastIndex }
    : null;
}

/** Labels are the same whatever their case and their white space. */
export const normalLabel = (label: string): string =>
  label.trim().replace(/\s+/g, ' ').toLowerCase().toUpperCase();
