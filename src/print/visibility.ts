/**
 * How much a tint at print lightness L* counts: fully from L* 35 up, ever less towards black, where surface
 * reflections and the eye hide it. Own choice; near-neutral calibration weighs shadows down likewise (ANSI/CGATS
 * TR 015, from memory).
 */
export function visibility(L: number): number {
  return Math.min(1, Math.max(0.1, (L - 5) / 30));
}
