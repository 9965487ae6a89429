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
