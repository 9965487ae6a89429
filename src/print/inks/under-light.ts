import type { LightShift, PrintModel } from '../model';
import { colouredShare } from './model';

/** Inks known under D50, seen under another light: their greys change as `light` says. */
export function underLight(daylight: PrintModel, light: LightShift): PrintModel {
  const change = new Float64Array(3);
  return {
    dimensions: daylight.dimensions,
    drifts: daylight.drifts,
    white: light.white,
    lab(device, drift, out) {
      daylight.lab(device, drift, out);
      light.shift(out[0], colouredShare(device), change);
      for (let i = 0; i < 3; i++) out[i] += change[i];
    },
    dataSpread(L, device) {
      const own = daylight.dataSpread(L, device);
      const seen = light.spread(L, colouredShare(device));
      return { a: Math.hypot(own.a, seen.a), b: Math.hypot(own.b, seen.b) };
    },
    ground: [...daylight.ground, ...light.ground],
  };
}
