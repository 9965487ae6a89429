/**
 * The stored level whose lightness is nearest, for every wanted lightness.
 * @param lightness L* of every level, rising or falling throughout; plateaus are taken at the end that is met first
 */
export function nearestLevels(wanted: Float32Array, lightness: Float32Array): Uint16Array {
  const last = lightness.length - 1;
  const falling = lightness[last] < lightness[0];
  // a scale that rises, also where a profile's own turns back
  const rising = falling ? Float32Array.from(lightness).reverse() : Float32Array.from(lightness);
  for (let i = 1; i <= last; i++) if (rising[i] < rising[i - 1]) rising[i] = rising[i - 1];
  return Uint16Array.from(wanted, L => {
    const level = nearest(rising, L);
    return falling ? last - level : level;
  });
}

function nearest(rising: Float32Array, L: number): number {
  let low = 0;
  let high = rising.length - 1;
  while (high > low) {
    const middle = (low + high) >> 1;
    if (rising[middle] < L) low = middle + 1;
    else high = middle;
  }
  return low > 0 && L - rising[low - 1] <= rising[low] - L ? low - 1 : low;
}
