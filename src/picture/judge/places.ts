import type { Place } from '../../shared/picture';
import { BLOCK, type Blocks } from '../pass/tally';

const MOST = 16;
/** Blocks of 8 x 8 that share their colour samples in 4:2:0. */
const CODEC_UNIT = 4;

/**
 * Boxes around neighbouring blocks that stray by more than `limit`, strongest first, at most 16. A patch no larger than a
 * codec's own unit of colour must stray twice as far: chance leaves such patches in any noisy picture.
 */
export function placesOf(
  blocks: Blocks,
  distance: Float32Array,
  limit: number,
  width: number,
  height: number,
): Place[] {
  const { columns, rows } = blocks;
  const seen = new Uint8Array(distance.length);
  const places: Place[] = [];
  const queue: number[] = [];
  for (let start = 0; start < distance.length; start++) {
    if (seen[start] || distance[start] <= limit) continue;
    let [left, top, right, bottom, max, size] = [columns, rows, 0, 0, 0, 0];
    seen[start] = 1;
    queue.push(start);
    for (let i = queue.pop(); i !== undefined; i = queue.pop()) {
      size++;
      const x = i % columns;
      const y = (i - x) / columns;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
      if (distance[i] > max) max = distance[i];
      for (let v = Math.max(0, y - 1); v <= Math.min(rows - 1, y + 1); v++)
        for (let u = Math.max(0, x - 1); u <= Math.min(columns - 1, x + 1); u++) {
          const next = v * columns + u;
          if (seen[next] || distance[next] <= limit) continue;
          seen[next] = 1;
          queue.push(next);
        }
    }
    if (size <= CODEC_UNIT && max <= 2 * limit) continue;
    places.push({
      x: left * BLOCK,
      y: top * BLOCK,
      width: Math.min(width, (right + 1) * BLOCK) - left * BLOCK,
      height: Math.min(height, (bottom + 1) * BLOCK) - top * BLOCK,
      max,
    });
  }
  return places.sort((a, b) => b.max - a.max || a.y - b.y || a.x - b.x).slice(0, MOST);
}
