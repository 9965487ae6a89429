import type { LightnessCurve } from '../../shared/remedy';

/** A curve's value between its whole steps, L* to L*. */
export function curveAt(curve: LightnessCurve, L: number): number {
  const last = curve.length - 1;
  const at = (Math.min(100, Math.max(0, L)) / 100) * last;
  const i = Math.min(last - 1, Math.floor(at));
  return curve[i] + (at - i) * (curve[i + 1] - curve[i]);
}
