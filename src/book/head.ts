// no-unit-test: test/cli/output.test.ts and test/book/layouts/index.test.ts look at files by it
import fs from 'node:fs/promises';

/** Bytes that tell whose a result is. */
export const ENOUGH = 512;

/** The first bytes of a file, fewer where it has fewer. */
export async function headOf(file: string, bytes = ENOUGH): Promise<Buffer> {
  const handle = await fs.open(file);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(bytes), 0, bytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}
