import { lastScan, runStart } from './decode-jpeg-scan';
import { sharp } from './decode-sharp';
import { UnreadableError } from './header/unreadable';
import type { Header } from './types';

/** Bytes that may be left over behind the picture: less than damage leaves. */
const LEFT_OVER = 32;
/** Bytes that the decoder looks ahead without a need: its bit buffer holds 64 bits. */
const AHEAD = 8;

/**
 * Refuses a JPEG whose coded data do not end where its picture does, which the decoder does not notice: what was never
 * written (zeros, where a copy broke off) or written over still decodes, into bars of black and grey, only by other
 * lengths than were written. Looks closer only where the data look odd: the last bytes are taken away, and a whole
 * picture misses them; with the mark of the end taken away it misses nothing.
 * @param bytes of a file that decodes without a warning
 * @throws UnreadableError
 */
export async function refuseOverwritten(bytes: Buffer, header: Header): Promise<void> {
  const refuse = (reason: 'truncated' | 'corrupt', what: string) =>
    new UnreadableError(reason, `${what} Copy or export it again.`, header.format, header);
  const scan = lastScan(bytes);
  if (!scan) return;
  const { from, to, ended, odd } = scan;
  if (!ended)
    throw refuse(
      'truncated',
      'The picture breaks off: the rest of the file is missing or was never written.',
    );
  if (!odd || to - from <= LEFT_OVER) return;
  if (await decodes(bytes.subarray(0, to - LEFT_OVER))) {
    // harmless where nothing but filling stands behind the picture
    const filling = runStart(bytes, to - 1, from);
    if (to - filling > LEFT_OVER && (await decodes(bytes.subarray(0, filling + AHEAD)))) return;
  } else if (await decodes(Buffer.concat([bytes.subarray(0, to), Buffer.alloc(AHEAD)]))) return;
  throw refuse('corrupt', 'The picture is damaged: part of the file was written over with something else.');
}

/** Whether the decoder finds all it needs; the pixels themselves are not wanted. */
async function decodes(bytes: Buffer): Promise<boolean> {
  try {
    const image = sharp(bytes, { failOn: 'warning', ignoreIcc: true, limitInputPixels: false });
    await image.resize(1, 1, { fit: 'fill' }).raw().toBuffer();
    return true;
  } catch {
    return false;
  }
}
