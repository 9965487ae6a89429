// no-unit-test: index.test.ts holds it against the meaning, pixel by pixel
import type { AdditiveRgb } from '../../picture/meaning/additive';
import { quickLabF } from '../../picture/meaning/cie';
import type { Samples } from '../../picture/types';
import type { GreyMethod } from '../../shared/remedy';
import { channelShares } from './method';
import { PER_L } from './plane';
import { rampLightness } from './ramp';

const FINE = 65535;

/** Lightness (the linear table's steps) of colour whose channels add up: three tables and one more a pixel. */
export function summedLightness(samples: Samples, meaning: AdditiveRgb, method: GreyMethod): Uint16Array {
  const data = samples.data as Uint8Array | Uint16Array;
  const levels = data instanceof Uint8Array ? 256 : 65536;
  const { share, sumIs } = channelShares(method, meaning);
  const [red, green, blue] = share.map(of =>
    Float32Array.from({ length: levels }, (_, i) => of(i / (levels - 1))),
  );
  const step = samples.alpha ? 4 : 3;
  const out = new Uint16Array(data.length / step);
  if (sumIs === 'stored') {
    const axis = rampLightness(meaning, 'rgb', FINE + 1).map(L => Math.round(L * PER_L));
    for (let i = 0, at = 0; i < out.length; i++, at += step) {
      const sum = red[data[at]] + green[data[at + 1]] + blue[data[at + 2]];
      out[i] = axis[(sum * FINE + 0.5) | 0];
    }
    return out;
  }
  for (let i = 0, at = 0; i < out.length; i++, at += step) {
    const light = red[data[at]] + green[data[at + 1]] + blue[data[at + 2]];
    // weights below 0 go below black, those above 1 beyond white
    const L = (116 * quickLabF(Math.min(light, 1)) - 16) * PER_L;
    out[i] = L > 0 ? (L + 0.5) | 0 : 0;
  }
  return out;
}
