// no-unit-test: test/cli/actions/convert.test.ts and test/cli/usage.test.ts run the built program with it
import fs from 'node:fs/promises';
import { namesPicture } from '../book/discovery/extensions';
import { readHeader, UnreadableError } from '../picture/header';
import { openPicture } from '../picture/open';
import { isCoarse } from '../remedy/encode';
import { Failure } from './failure';

const MOST_BYTES = 4 << 20;

/**
 * The grey profile in a file: an ICC profile, or a picture that carries one, as its neighbours do that it is to match.
 * @throws Failure where it cannot be read, RemedyError where it is no grey profile: said once, before any picture is read
 */
export async function greyProfileIn(file: string): Promise<Uint8Array> {
  const profile = namesPicture(file) ? carriedBy(file) : await bytesOf(file);
  await isCoarse(profile);
  return profile;
}

function carriedBy(file: string): Uint8Array {
  try {
    const { source, close } = openPicture({ file });
    try {
      const { icc } = readHeader(source);
      if (icc) return icc;
    } finally {
      close();
    }
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    throw new Failure(`--profile: "${file}" cannot be read. ${error.message}`);
  }
  throw new Failure(
    `--profile: the picture "${file}" carries no profile. Name one that does, or an ICC profile.`,
  );
}

async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    const stat = await fs.stat(file);
    if (!stat.isFile()) throw new Error('it is no file');
    if (stat.size > MOST_BYTES) throw new Error('it is too large for a profile');
    return new Uint8Array(await fs.readFile(file));
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const why = code === 'ENOENT' ? 'there is no such file' : (code ?? message);
    throw new Failure(`--profile: "${file}" cannot be read: ${why}.`);
  }
}
