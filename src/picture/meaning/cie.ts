const STEPS = 4096;
/** Somewhat beyond white: profiles with bright primaries, and rounding. */
const MOST = 1.5;
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;
const table = Float32Array.from({ length: STEPS * MOST + 2 }, (_, i) => labF(i / STEPS));

/** CIE 15:2018, 8.2.1: f of a tristimulus value over that of white. */
export function labF(t: number): number {
  return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
}

/** The same from a table: within 5e-6 (0.003 in a*), for millions of values. Clamped to 0 and 1.5. */
export function quickLabF(t: number): number {
  const at = Math.max(0, Math.min(t, MOST)) * STEPS;
  const i = at | 0;
  return table[i] + (at - i) * (table[i + 1] - table[i]);
}
