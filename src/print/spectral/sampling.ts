// no-unit-test: a constant and a reader of columns, used by every test beside it
import type { Sampling } from '../../colour/spectra';
import type { Table } from '../../colour/table';

/** The grid that all measured spectra here share: 400-700 nm in steps of 10. */
export const GRID: Sampling = { from: 400, step: 10, count: 31 };

/** Spectra in a table's rows on that grid; `prefix` stands before the wavelength in the columns' names. */
export function spectraIn(table: Table, prefix = ''): Float64Array[] {
  const columns = Array.from({ length: GRID.count }, (_, i) =>
    table.column(`${prefix}${GRID.from + i * GRID.step}`),
  );
  return Array.from({ length: table.rows }, (_, row) => Float64Array.from(columns, column => column[row]));
}
