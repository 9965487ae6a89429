import { lightness } from '../../colour/lab';
import { AdditiveRgb } from '../../picture/meaning/additive';
import { GreyCurve } from '../../picture/meaning/curve';
import { blackLightness, pressMeaning } from '../../picture/meaning/press';
import type { Meaning } from '../../picture/meaning/types';

/**
 * L* of every level of one channel, of R = G = B, or of black ink alone: exact at any depth wherever the meaning is a
 * curve or the shipped press data, else as near as the meaning's own table.
 * @param levels 256 or 65536
 */
export function rampLightness(
  meaning: Meaning,
  space: 'grey' | 'rgb' | 'cmyk',
  levels: number,
): Float32Array {
  const ramp = rampOf(meaning, space);
  if (ramp) return Float32Array.from({ length: levels }, (_, i) => ramp(i / (levels - 1)));
  const channels = { grey: 1, rgb: 3, cmyk: 4 }[space];
  const values = new Float32Array(levels * channels);
  for (let i = 0; i < levels; i++) {
    const value = (i / (levels - 1)) * 255;
    if (space === 'cmyk') values[i * 4 + 3] = value;
    else values.fill(value, i * channels, (i + 1) * channels);
  }
  const lab = new Float32Array(levels * 3);
  meaning.lab(values, levels, lab);
  return Float32Array.from({ length: levels }, (_, i) => lab[i * 3]);
}

/** L* of a stored value (0-1) as a formula; null where there is only a table. */
function rampOf(meaning: Meaning, space: 'grey' | 'rgb' | 'cmyk'): ((value: number) => number) | null {
  if (meaning instanceof GreyCurve) return meaning.lightness;
  if (meaning instanceof AdditiveRgb) {
    const { light, matrix } = meaning;
    return value => lightness(100 * light.reduce((Y, curve, c) => Y + matrix[3 + c] * curve(value), 0));
  }
  return space === 'cmyk' && meaning === pressMeaning() ? blackLightness : null;
}
