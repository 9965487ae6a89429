import { AdditiveRgb } from '../../picture/meaning/additive';
import { LabGrid } from '../../picture/meaning/grid';
import type { Meaning } from '../../picture/meaning/types';
import type { Samples } from '../../picture/types';
import type { GreyMethod } from '../../shared/remedy';
import { greyOfLab } from './method';
import { eachMix } from './mixes';
import { linearLightness, PER_L, STEPS, type TonePlane } from './plane';
import { rampLightness } from './ramp';
import { alphaOf, apart, singleOf } from './single';
import { summedLightness } from './sums';
import { wholeNumbers } from './whole';

/**
 * A decoded picture as grey. What is grey already (R = G = B, one channel, black ink alone) is taken level by level and
 * loses nothing, whatever the method; colour and inks are weighed by the method, through the picture's own meaning.
 * @throws RemedyError where a mix cannot keep white white
 */
export function greyPlane(decoded: Samples, meaning: Meaning, method: GreyMethod): TonePlane {
  const samples = wholeNumbers(decoded);
  const { width, height, space } = samples;
  const plain = { width, height, alpha: alphaOf(samples), tint: null, colour: null };
  const single = singleOf(samples);
  if (single && space !== 'lab') {
    const levels = single.data instanceof Uint8Array ? 256 : STEPS;
    return { ...plain, index: apart(single), lightness: rampLightness(meaning, space, levels) };
  }
  return { ...plain, index: weighed(samples, meaning, method), lightness: linearLightness() };
}

/** Lightness of every pixel in the linear table's steps. */
function weighed(samples: Samples, meaning: Meaning, method: GreyMethod): Uint16Array {
  if (samples.space === 'lab' && method.kind === 'lightness') return labLightness(samples);
  if (meaning instanceof AdditiveRgb) return summedLightness(samples, meaning, method);
  const out = new Uint16Array(samples.width * samples.height);
  if (meaning instanceof LabGrid && method.kind === 'lightness') {
    meaning.lightness(samples.data as Uint8Array, samples.channels + (samples.alpha ? 1 : 0), PER_L, out);
    return out;
  }
  const grey = greyOfLab(method);
  const finish = (lab: Float32Array, n: number, out: Float32Array) => {
    for (let i = 0; i < n; i++) {
      const L = grey(lab[i * 3], lab[i * 3 + 1], lab[i * 3 + 2]);
      out[i] = Math.round(Math.min(100, Math.max(0, L)) * PER_L);
    }
  };
  return eachMix(samples, meaning, 1, finish, out);
}

function labLightness({ data, alpha, width, height }: Samples): Uint16Array {
  const step = alpha ? 4 : 3;
  const out = new Uint16Array(width * height);
  for (let i = 0, at = 0; i < out.length; i++, at += step)
    out[i] = data[at] > 0 ? Math.round((data[at] / 32767) * (STEPS - 1)) : 0;
  return out;
}
