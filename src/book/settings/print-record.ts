// no-unit-test: test/book/settings/load.test.ts loads records, test/print/record reads them
import { parsePrintRecord } from '../../print';
import type { PrintRecord } from '../../shared/target';
import { type SettingsFiles, TooLarge } from './within';

/** A record of many orders and greys is a few kilobytes. */
const MOST_BYTES = 1024 * 1024;

/**
 * The print house's record in a file that `within` has passed.
 * @throws Error that says in plain words what is wrong with it
 */
export async function printRecordIn(source: SettingsFiles, file: string): Promise<PrintRecord> {
  const bytes = await source.bytes(file, MOST_BYTES).catch(error => {
    throw error instanceof TooLarge
      ? new Error(`the file ${error.message}: it is no record of a print house`)
      : error;
  });
  return parsePrintRecord(Buffer.from(bytes).toString('utf8'));
}
