/** One table of a CGATS.17 / ISO 28178 text file: numbers by field name, a row a sample. */
export interface CgatsTable {
  /** First word of the file, e.g. `CTI3`, `CGATS.17`. */
  identifier: string;
  /** Keywords outside the table: `ORIGINATOR`, `FILE_DESCRIPTOR`, ... Quotes removed. */
  keywords: Record<string, string>;
  fields: string[];
  /** `rows[i][j]` is field j of sample i, as written. */
  rows: string[][];
}

export class CgatsError extends Error {}

const WORD = /"([^"]*)"|[^\s"]+/g;

/** Words of a line; a `#` outside quotes starts a comment. */
function words(line: string): string[] {
  const found: string[] = [];
  for (const match of line.matchAll(WORD)) {
    if (match[1] === undefined && match[0].startsWith('#')) break;
    found.push(match[1] ?? match[0]);
  }
  return found;
}

/**
 * Reads the first table of a CGATS.17 / ISO 28178 text. Field names may wrap over lines, values may be separated by
 * tabs or blanks. Throws `CgatsError` (what and where) if a section is missing or a row has the wrong length.
 */
export function parseCgats(text: string): CgatsTable {
  const table: CgatsTable = { identifier: '', keywords: {}, fields: [], rows: [] };
  let section: 'head' | 'format' | 'data' | 'done' = 'head';
  const lines = text.split(/\r\n|\r|\n/);
  for (let n = 0; n < lines.length && section !== 'done'; n++) {
    const found = words(lines[n]);
    if (found.length === 0) continue;
    if (table.identifier === '') table.identifier = found[0];
    else if (found[0] === 'BEGIN_DATA_FORMAT') section = 'format';
    else if (found[0] === 'END_DATA_FORMAT') section = 'head';
    else if (found[0] === 'BEGIN_DATA') section = 'data';
    else if (found[0] === 'END_DATA') section = 'done';
    else if (section === 'format') table.fields.push(...found);
    else if (section === 'data') {
      if (found.length !== table.fields.length)
        throw new CgatsError(
          `line ${n + 1} has ${found.length} values, but ${table.fields.length} fields were announced`,
        );
      table.rows.push(found);
    } else if (found.length > 1) table.keywords[found[0]] = found.slice(1).join(' ');
  }
  if (table.fields.length === 0) throw new CgatsError('no field names (BEGIN_DATA_FORMAT) in this text');
  if (section !== 'done')
    throw new CgatsError('the data do not end (END_DATA is missing): the file is cut short');
  return table;
}

/** Values of one field as numbers; a decimal comma counts as a point. Throws `CgatsError` if absent or not a number. */
export function column(table: CgatsTable, field: string): Float64Array {
  const at = table.fields.indexOf(field);
  if (at < 0) throw new CgatsError(`no field ${field} in this text; it has ${table.fields.join(', ')}`);
  return Float64Array.from(table.rows, (row, i) => {
    const value = Number(row[at].replace(',', '.'));
    if (!Number.isFinite(value))
      throw new CgatsError(`sample ${i + 1}: ${field} is "${row[at]}", not a number`);
    return value;
  });
}
