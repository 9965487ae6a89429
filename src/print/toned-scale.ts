import { labToSrgb } from '../colour/srgb';
import type { Forecast } from '../shared/forecast';
import type { Target } from '../shared/target';
import { forecast } from './forecast';

/** Greys of equal area between the deepest shadows and the lights, where a tint is seen. */
const SCALE = Array.from({ length: 12 }, (_, i) => 12 + i * 7);

/** Forecast of a scale of greys stored as sRGB with a tint (a*, b*) of its own, as large as sRGB can hold. */
export function forecastToned(a: number, b: number, target: Target): Forecast {
  const zones = SCALE.map(L => {
    const mean = [...labToSrgb([L, a, b], new Float64Array(3))];
    return { L, a, b, weight: 1 / SCALE.length, clusters: [{ weight: 1, mean, points: [mean] }] };
  });
  const neutral = a === 0 && b === 0;
  return forecast({ space: 'rgb', neutral, plainRgb: true, histogram: null, zones }, target);
}
