/**
 * Grey aim of ISO 12647-2:2013 (4.2.8, Annex A, a recommendation): a grey is neutral if its a*, b* fade from the
 * paper's towards zero as it darkens. It is an offset standard's aim; for want of another it is used for all processes.
 */
export interface GreyAim {
  /** Share of the paper's a*, b* that a grey of print lightness L* should keep. */
  share(L: number): number;
  a(L: number): number;
  b(L: number): number;
}

/** Below the darkest three-ink grey the formula would turn round: a share of the paper's tint stays. */
const LEAST = 0.15;

/**
 * `white`: Lab of the paper. `Lcmy`: L* of C = M = Y = 100 % on it; for photographic processes, of their black.
 * k = 1 - 0.85 (L*p - L*) / (L*p - L*cmy), a* = a*p k, b* = b*p k; here k is at least 0.15 and at most 1.
 */
export function greyAim(white: readonly [number, number, number], Lcmy: number): GreyAim {
  const [Lp, ap, bp] = white;
  const share = (L: number) => Math.min(1, Math.max(LEAST, 1 - (0.85 * (Lp - L)) / (Lp - Lcmy)));
  return { share, a: L => ap * share(L), b: L => bp * share(L) };
}
