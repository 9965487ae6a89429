// no-unit-test: test/book/layouts/relink-all.test.ts replaces texts by it, and test/remedy/relinking/follow.test.ts
import { randomBytes } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import { isWithin } from '../settings/within';
import type { FileText } from './encoding';

/** A text of the book as it was read. */
export interface WritableText extends Pick<FileText, 'encode'> {
  /** Absolute. */
  file: string;
  bytes: Buffer;
}

const NO_SIGN =
  'The new name has letters that the encoding of this file does not. Name the picture otherwise.';
const CHANGED = 'It was changed meanwhile, and was left as it is. Do it again.';

/** Why a text cannot hold what it is to say; null where it can. */
export const unwritable = (source: WritableText, text: string): string | null =>
  source.encode(text) ? null : NO_SIGN;

/**
 * Writes a text of the book at `root` beside itself, flushed, and puts it in its place unless that was changed since it
 * was read. Null once it is written, else why not.
 */
export async function replaceText(root: string, source: WritableText, text: string): Promise<string | null> {
  const bytes = source.encode(text);
  if (!bytes) return NO_SIGN;
  let temporary: string | null = null;
  try {
    // a link stays a link
    const file = await fs.realpath(source.file);
    if (!isWithin(await fs.realpath(root), file)) return "It is a link that leads out of the book's folder.";
    const { mode } = await fs.stat(file);
    if ((mode & 0o222) === 0) return 'It is write-protected.';
    temporary = path.join(
      path.dirname(file),
      `.${path.basename(file)}.${randomBytes(6).toString('hex')}.tmp`,
    );
    const handle = await fs.open(temporary, 'wx', mode & 0o777);
    try {
      await handle.writeFile(bytes);
      await handle.chmod(mode & 0o777);
      await handle.sync();
    } finally {
      await handle.close();
    }
    if (!(await fs.readFile(file)).equals(source.bytes)) return CHANGED;
    await fs.rename(temporary, file);
    temporary = null;
    return null;
  } catch (error) {
    return `It could not be written (${(error as NodeJS.ErrnoException).code}).`;
  } finally {
    if (temporary) await fs.rm(temporary, { force: true });
  }
}
