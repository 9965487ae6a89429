/** A table read from CSV text: lines that begin with `#` are comments, the first line after them names the columns. */
export interface Table {
  columns: readonly string[];
  rows: number;
  /** A column as numbers, NaN where a cell is empty or no number. @throws where there is no such column */
  column(name: string): Float64Array;
  /** A column as text. @throws where there is no such column */
  labels(name: string): string[];
}

export function parseTable(csv: string): Table {
  const [head, ...lines] = csv
    .split(/\r?\n/)
    .filter(line => line !== '' && !line.startsWith('#'))
    .map(line => line.split(','));
  const at = (name: string) => {
    const i = head.indexOf(name);
    if (i < 0) throw new Error(`no column "${name}" among ${head.join(', ')}`);
    return i;
  };
  return {
    columns: head,
    rows: lines.length,
    column(name) {
      const i = at(name);
      return Float64Array.from(lines, cells => (cells[i] === '' ? Number.NaN : Number(cells[i])));
    },
    labels(name) {
      const i = at(name);
      return lines.map(cells => cells[i]);
    },
  };
}
