import type { Raster } from '../../shared/reader-protocol';

/** Shapes that differ by less are one shape: pixels are whole. */
const SAME = 0.01;

/** Whether two pictures can be laid over each other, whatever their sizes: both are as wide for their height. */
export const sameShape = (
  one: Pick<Raster, 'fullWidth' | 'fullHeight'>,
  other: Pick<Raster, 'fullWidth' | 'fullHeight'>,
): boolean => Math.abs((one.fullWidth * other.fullHeight) / (one.fullHeight * other.fullWidth) - 1) < SAME;
