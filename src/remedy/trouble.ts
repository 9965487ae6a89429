import path from 'node:path';
import { ChildFailure } from '../book/child';
import { RemedyError } from './remedy-error';

/** Nothing more can be written: there is no use in going on. */
export class DiskFull extends Error {
  override readonly name = 'DiskFull';
}

export const DISK_FULL =
  'The disk is full, so the conversion was stopped. Every picture is whole, the old one or the new one. Make room and start again: what is done already is not done twice.';

export const STOPPED =
  'Stopped. Every picture is whole, and what was converted stands. Start again to go on: what is done already is not done twice.';

/**
 * What ended the work in good order, and what that means for a picture that it did not come to.
 * @throws the error itself where it is another
 */
export function endOf(error: unknown, signal: AbortSignal | undefined): { stopped: string; left: string } {
  if (error instanceof DiskFull) return { stopped: error.message, left: 'Not converted: the disk is full.' };
  if (signal?.aborted && error === signal.reason)
    return { stopped: STOPPED, left: 'Not converted: the work was stopped before.' };
  throw error;
}

/**
 * Why a picture was not converted, in a sentence, from whatever was thrown.
 * @param folder where it was to be written (absolute)
 * @param elsewhere how it can be written somewhere else instead; null: it cannot, as an original that is brought back
 * @throws DiskFull, and what is no picture's own failure
 */
export function troubleOf(error: unknown, folder: string, elsewhere: string | null = ELSEWHERE): string {
  if (error instanceof RemedyError) return error.message;
  if (error instanceof ChildFailure) return lost(error);
  const { code, path: file, dest = file } = error as NodeJS.ErrnoException & { dest?: string };
  if (code === 'ENOSPC' || code === 'EDQUOT') throw new DiskFull(DISK_FULL);
  if (typeof code !== 'string' || !/^E[A-Z0-9]+$/.test(code)) throw error;
  if (code === 'EACCES' || code === 'EPERM') return noRight(dest, folder, elsewhere);
  if (code === 'EROFS')
    return `The disk is read-only, so nothing was changed.${elsewhere === null ? '' : ` Make it writable, or ${elsewhere}.`}`;
  return sentences[code] ?? `The file system refused it (${code}). The picture was left as it is.`;
}

/** @throws the failure itself where no converter can be started at all */
function lost(failure: ChildFailure): string {
  switch (failure.kind) {
    case 'crashed':
      return 'The converter crashed on this picture, which was left as it is. It may be damaged: export it again.';
    case 'timeout':
      return `Converting was given up: ${failure.message}. The picture was left as it is. It may be damaged: export it again.`;
    default:
      throw failure;
  }
}

const ELSEWHERE = 'have the results written into another folder';

const noRight = (file: string | undefined, folder: string, elsewhere: string | null) =>
  file === undefined || path.dirname(file) === folder
    ? `The folder "${folder}" may not be written to, so nothing was changed. Give yourself the right to${elsewhere === null ? '' : `, or ${elsewhere}`}.`
    : `You have no right to "${file}", so nothing was changed. Give yourself the right to read and to write there.`;

const sentences: Record<string, string> = {
  ENOENT: 'The picture or its folder was taken away while it was converted.',
  ENAMETOOLONG: 'The name of the result would be too long for its disk. Shorten the name of the picture.',
  EFBIG: 'The result would be larger than its disk, or a limit of this system, lets a file be.',
  ENOTDIR:
    'A file stands where the folder of the result should be. Have the results written into another folder.',
  EEXIST:
    'A file stands where the folder of the result should be. Have the results written into another folder.',
};
