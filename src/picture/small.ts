import type { SmallPicture } from '../shared/reader-protocol';
import { light } from './light';
import type { OnSize } from './open';
import { rasterOf } from './raster';

/**
 * A picture for a page that carries many, in several sizes, the largest first: decoded once. Never for judging.
 * @param page from 1
 * @param edges the longest edge of each size, in pixels, from the largest on
 * @throws UnreadableError
 */
export async function smallPictures(
  file: string,
  page: number,
  edges: readonly number[],
  onSize?: OnSize,
): Promise<SmallPicture[]> {
  const raster = await rasterOf({ file }, page, edges[0], onSize);
  return Promise.all(edges.map(edge => light(raster, edge)));
}
