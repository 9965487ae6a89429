import type { GreyMethod, Moved, RemedyWish } from '../shared/remedy';
import { greyMethods } from './grey/methods';
import type { TonePlane } from './grey/plane';

/** Less than this, in L*, is a rounding and no move. */
const LEAST = 0.005;

/**
 * How far lightness was moved on purpose, over every pixel.
 * @param own the picture's own lightness, and the planned one, as planes of one size
 * @param blackMoved the scaling of the black point had a part in it
 * @returns null where nothing was moved
 */
export function movedBetween(
  own: TonePlane,
  planned: TonePlane,
  { grey, curve }: Pick<RemedyWish, 'grey' | 'curve'>,
  blackMoved: boolean,
): Moved | null {
  const sameIndex = own.index === planned.index;
  // mostly no tone is moved, and no pixel need be looked at
  if (sameIndex && own.lightness.every((L, entry) => Math.abs(L - planned.lightness[entry]) < LEAST))
    return null;
  const { most, mean } = sameIndex ? byEntry(own, planned) : byPixel(own, planned);
  if (most < LEAST) return null;
  return {
    ...{ maxMove: most, meanMove: mean },
    ...{ method: sameIndex ? null : methodName(grey), fit: curve !== null, blackPoint: blackMoved },
  };
}

function byEntry({ index, lightness }: TonePlane, planned: TonePlane): { most: number; mean: number } {
  const counts = new Uint32Array(lightness.length);
  for (let i = 0; i < index.length; i++) counts[index[i]]++;
  let most = 0;
  let sum = 0;
  counts.forEach((count, entry) => {
    if (count === 0) return;
    const move = Math.abs(lightness[entry] - planned.lightness[entry]);
    sum += move * count;
    most = Math.max(most, move);
  });
  return { most, mean: sum / index.length };
}

function byPixel({ index, lightness }: TonePlane, planned: TonePlane): { most: number; mean: number } {
  let most = 0;
  let sum = 0;
  for (let i = 0; i < index.length; i++) {
    const move = Math.abs(lightness[index[i]] - planned.lightness[planned.index[i]]);
    sum += move;
    if (move > most) most = move;
  }
  return { most, mean: sum / index.length };
}

/** As it is asked for: by its name, or by its weights. */
function methodName(method: GreyMethod): string {
  const asked = JSON.stringify(method);
  const named = greyMethods.find(each => JSON.stringify(each.method) === asked);
  if (named) return named.id;
  return method.kind === 'mix' ? `${method.red},${method.green},${method.blue}` : method.kind;
}
