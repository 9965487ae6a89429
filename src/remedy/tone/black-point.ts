import { lightness, luminance } from '../../colour/lab';

/**
 * Black point compensation (ISO 18619:2015, 4: linear in XYZ between black points, white kept): L* of a grey where the
 * black of L* `from` becomes one of L* `to`. Darker than `from` becomes `to`.
 */
export function blackPointScaled(from: number, to: number): (L: number) => number {
  const Yfrom = luminance(from);
  const Yto = luminance(to);
  const scale = (100 - Yto) / (100 - Yfrom);
  return L => lightness(Yto + Math.max(0, luminance(L) - Yfrom) * scale);
}
