/**
 * Breaks a text into lines of at most `width` characters, at spaces. A longer word, such as a path, stays whole: it is
 * to be copied. Further lines of an entry can hang in by `hang` characters.
 */
export function wrap(text: string, width: number, hang = 0): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter(Boolean)) {
    const indent = lines.length ? ' '.repeat(hang) : '';
    if (!line) line = indent + word;
    else if (line.length + 1 + word.length <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = ' '.repeat(hang) + word;
    }
  }
  return line ? [...lines, line] : lines;
}

/** Words that stay together on a line. */
export interface Piece {
  text: string;
  /** Follows it unpainted. */
  after?: string;
  /** Spaces before it, where it does not begin a line; left out: one. */
  apart?: number;
  /** Changes nothing of the room that it takes. */
  paint?: (text: string) => string;
}

/** Pieces in lines of at most `width` characters each. */
export function flow(pieces: readonly Piece[], width: number): string[] {
  const lines: string[] = [];
  let room = 0;
  for (const { text, after = '', apart = 1, paint = String } of pieces) {
    const { length } = text + after;
    const shown = paint(text) + after;
    if (lines.length && room >= apart + length) {
      lines.push(lines.pop() + ' '.repeat(apart) + shown);
      room -= apart + length;
    } else {
      lines.push(shown);
      room = width - length;
    }
  }
  return lines;
}

export const indent = (lines: readonly string[], by: number): string[] =>
  lines.map(line => (line ? ' '.repeat(by) + line : line));

/** Cells under each other, two spaces between columns; numbers (`right`) end under each other. */
export function columns(rows: readonly (readonly string[])[], right: readonly number[] = []): string[] {
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map(row => row[at].length)));
  return rows.map(row =>
    row
      .map((cell, at) => (right.includes(at) ? cell.padStart(widths[at]) : cell.padEnd(widths[at])))
      .join('  ')
      .trimEnd(),
  );
}
