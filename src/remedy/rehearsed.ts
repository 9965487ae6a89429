// no-unit-test: test/remedy/batch.test.ts rehearses conversions through it
import fs from 'node:fs/promises';
import path from 'node:path';
import type { Conversion } from '../shared/conversion';
import type { RemedyWish } from '../shared/remedy';
import { copied, type Undertaking } from './carry-out';
import { luminanceStays } from './luminance';
import { failed, unwritten } from './outcomes';
import { troubleOf } from './trouble';
import { COARSE } from './words';

/** Whether 8 bits are too few for the grey profile, and why they are in a JPEG that is coded anew. */
export interface FewBits {
  coarse: boolean;
  inJpeg: string | null;
}

/** What would be made, and why it would not be. Writes nothing. */
export async function planned(
  { asked, order }: Undertaking,
  wish: RemedyWish,
  { coarse, inJpeg }: FewBits,
): Promise<Conversion> {
  const refused = await unwritable(path.dirname(order.output));
  if (refused) return failed(asked, wish, refused);
  if (!('format' in order)) return copied(asked, order, wish);
  if (
    inJpeg &&
    order.format === 'jpeg' &&
    luminanceStays(asked.luminance, asked.pages[0], order.wish) === 'no'
  )
    return failed(asked, wish, inJpeg);
  const widened = coarse && wish.bits === null && order.format !== 'jpeg' && order.bits === 8;
  return {
    ...unwritten(asked, wish),
    outcome: 'planned',
    output: order.shown,
    format: order.format,
    bits: widened ? 16 : order.bits,
    reason: null,
    told: [...order.told, ...(order.change ? [order.change] : []), ...(widened ? [COARSE] : [])],
  };
}

/** Why nothing can be written into a folder, which need not be there yet; null where it can. Writes nothing. */
async function unwritable(folder: string): Promise<string | null> {
  try {
    await fs.access(folder, fs.constants.W_OK);
    return null;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return unwritable(path.dirname(folder));
    return troubleOf(Object.assign(new Error(), { code }), folder);
  }
}
