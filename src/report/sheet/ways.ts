import { inOrders } from '../../rules/words';
import type { Forecast } from '../../shared/forecast';
import { isLineWork, signed } from './expect';

/**
 * The ways that the print house may take, one by one, with what each of them prints: nothing where there is only one.
 * `stated`: of one value, whose L* is told.
 */
export function waysOf(
  forecast: Forecast,
  stated: boolean,
): { weight: string; label: string; prints: string }[] {
  const isLine = isLineWork(forecast, { stated });
  return (forecast.routes ?? []).map(({ weight, label, tint, Lprint, black }) => ({
    weight: `${(100 * weight).toFixed(0)} %`,
    label,
    prints: [
      stated ? `L* ${Lprint.toFixed(0)}` : '',
      isLine ? '' : `tint ${signed(tint.a)} / ${signed(tint.b)}, seen ${inOrders(tint.seen)}`,
      `black L* ${black.toFixed(0)}`,
    ]
      .filter(Boolean)
      .join(', '),
  }));
}
