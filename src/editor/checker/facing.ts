// no-unit-test: it joins parts that have their own tests; test/e2e/suites/screen tests it as a process
import path from 'node:path';
import type { Pool } from '../../book/pool';
import { sheetOf } from '../../report/sheet';
import { facingDrawings } from '../../report/sheet/facing';
import type { Facing, FacingPicture } from '../../shared/facing';
import type { PictureReport } from '../../shared/finding';

/** Long edge of a picture beside another, pixels. */
const LONG_EDGE = 720;

/**
 * The pictures of a spread as they stand beside each other.
 * @param root of the book
 * @param own the picture that was asked about; its targets are those that are drawn
 * @param spread all of them in their order
 */
export async function facingOf(
  root: string,
  own: PictureReport,
  spread: readonly PictureReport[],
  pool: Pick<Pool, 'small'>,
  signal: AbortSignal,
): Promise<Facing> {
  const names = own.targets.map(({ name }) => name);
  const { conditions } = sheetOf(own, [], { light: null, series: 0 });
  return {
    conditions: conditions.map(({ process, paper }) => `${process}, ${paper}`),
    pictures: await Promise.all(
      spread.map(
        async (picture): Promise<FacingPicture> => ({
          path: picture.path,
          own: picture.path === own.path,
          small: await smallOf(path.join(root, picture.path), picture.facts.page, pool, signal),
          residual: picture.facts.encoding === 'rgb-residual',
          drawings: conditions.length > 0 ? facingDrawings(picture, names) : [],
        }),
      ),
    ),
  };
}

/** Null where it cannot be read: why is told by its findings. */
async function smallOf(file: string, page: number, pool: Pick<Pool, 'small'>, signal: AbortSignal) {
  try {
    const [small] = await pool.small(file, page, [LONG_EDGE], signal);
    return small;
  } catch {
    signal.throwIfAborted();
    return null;
  }
}
