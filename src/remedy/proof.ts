import type { TonePlane } from './grey/plane';

/** Largest and mean difference of L*, pixel by pixel, between what was intended and what was read. */
export function differenceOf(intended: TonePlane, read: TonePlane): { maxError: number; meanError: number } {
  const { index, lightness } = intended;
  const { index: readIndex, lightness: readLightness } = read;
  let most = 0;
  let sum = 0;
  for (let i = 0; i < index.length; i++) {
    const difference = Math.abs(lightness[index[i]] - readLightness[readIndex[i]]);
    sum += difference;
    if (difference > most) most = difference;
  }
  return { maxError: most, meanError: sum / index.length };
}
