/** Tails of the histogram that do not count: dust, specular lights, a film's edge. */
const TAIL = 0.005;

/** Whole L* of the file between which all but the tails lies. `histogram`: share of the area by L*, 0-100. */
export function fileRange(histogram: readonly number[]): { from: number; to: number } {
  const ending = (levels: number[]) => {
    let sum = 0;
    return levels.find(L => (sum += histogram[L]) > TAIL) ?? levels[0];
  };
  const levels = histogram.map((_, L) => L);
  return { from: ending(levels), to: ending(levels.toReversed()) };
}
