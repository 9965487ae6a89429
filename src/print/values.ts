import { srgbToLab } from '../colour/srgb';
import { relativeLabOfInks } from './inks/file-colour';
import type { SampledPicture } from './samples';

/** A stated value: inks C, M, Y, K (0 = none), R, G, B or grey (0 = black), all 0-1. */
export interface StatedValue {
  space: 'cmyk' | 'rgb' | 'grey';
  values: readonly number[];
}

const LENGTH = { cmyk: 4, rgb: 3, grey: 1 } as const;

/** A stated value as a picture of one zone. Throws a `RangeError` that names the value that is out of range. */
export function sampledValue({ space, values }: StatedValue): SampledPicture {
  if (values.length !== LENGTH[space])
    throw new RangeError(`${space} needs ${LENGTH[space]} values, not ${values.length}`);
  values.forEach((value, i) => {
    if (!(value >= 0 && value <= 1))
      throw new RangeError(`value ${i + 1} of ${space} is ${value}, not between 0 and 1`);
  });
  const [L, a, b] =
    space === 'cmyk'
      ? relativeLabOfInks(values)
      : srgbToLab(space === 'rgb' ? values : [values[0], values[0], values[0]], new Float64Array(3));
  const mean = [...values];
  return {
    space,
    neutral: space !== 'cmyk' && values.every(value => value === values[0]),
    zones: [{ L, a, b, weight: 1, clusters: [{ weight: 1, mean, points: [mean] }] }],
    histogram: null,
    plainRgb: true,
  };
}
