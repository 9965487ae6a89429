// no-unit-test: test/cli/actions/check.test.ts has the built program write over what it must not
import { headOf } from '../book/head';
import { signatureOf } from '../picture/header/signature';
import { bufferSource } from '../picture/header/source';

/** A file that is a picture by its first bytes, whatever it is called. */
export const isPictureFile = async (file: string): Promise<boolean> =>
  signatureOf(bufferSource(await headOf(file, 1024))).format !== 'unknown';
