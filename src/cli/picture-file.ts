// no-unit-test: test/cli/actions/check.test.ts has the built program write over what it must not
import fs from 'node:fs/promises';
import { signatureOf } from '../picture/header/signature';
import { bufferSource } from '../picture/header/source';

/** A file that is a picture by its first bytes, whatever it is called. */
export async function isPictureFile(file: string): Promise<boolean> {
  const handle = await fs.open(file);
  try {
    const head = Buffer.alloc(1024);
    const { bytesRead } = await handle.read(head, 0, head.length, 0);
    return signatureOf(bufferSource(head.subarray(0, bytesRead))).format !== 'unknown';
  } finally {
    await handle.close();
  }
}
