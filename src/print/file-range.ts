/** Tails of the histogram that do not count: dust, specular lights, a film's edge. */
const TAIL = 0.005;

/** Whole L* of the file between which all but the tails lies. `histogram`: share of the area by L*, 0-100. */
export function fileRange(histogram: readonly number[]): { from: number; to: number } {
  const last = histogram.length - 1;
  return { from: beyondTail(histogram, 0, 1) ?? 0, to: beyondTail(histogram, last, -1) ?? last };
}

/** The first L* from an end on by which more than a tail has been met; null where the whole is no more than that. */
function beyondTail(histogram: readonly number[], from: number, step: 1 | -1): number | null {
  let sum = 0;
  for (let L = from; L >= 0 && L < histogram.length; L += step) {
    sum += histogram[L];
    if (sum > TAIL) return L;
  }
  return null;
}
