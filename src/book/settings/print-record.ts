// no-unit-test: test/book/settings/load.test.ts loads records, test/print/record reads them
import fs from 'node:fs/promises';
import { parsePrintRecord } from '../../print';
import type { PrintRecord } from '../../shared/target';

/** A record of many orders and greys is a few kilobytes. */
const MOST_BYTES = 1024 * 1024;

/**
 * The print house's record in a file that `fileWithin` has passed.
 * @throws Error that says in plain words what is wrong with it
 */
export async function printRecordIn(file: string): Promise<PrintRecord> {
  const { size } = await fs.stat(file);
  if (size > MOST_BYTES) throw new Error('the file is larger than 1 MB: it is no record of a print house');
  return parsePrintRecord(await fs.readFile(file, 'utf8'));
}
