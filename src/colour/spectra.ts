import type { LightId } from '../shared/target';
import { cat16 } from './adaptation';
import { COUNT, distribution, FROM, observer, STEP } from './illuminants';
import { D50, xyzToLab } from './lab';
import { apply, type Matrix3 } from './matrix';

/** Where a spectrum was sampled: `count` values from `from` nm on, every `step` nm. */
export interface Sampling {
  from: number;
  step: number;
  count: number;
}

/** Spectra sampled alike, under one light. */
export interface SpectralView {
  /** Reflectance (0-1, over 1 with brightener) -> XYZ, Y = 100 for the perfect diffuser under this light. */
  xyz(spectrum: ArrayLike<number>, out: Float64Array): Float64Array;
  /** The same -> CIELAB as seen by an observer adapted to the light: CAT16 to D50, full adaptation. */
  lab(spectrum: ArrayLike<number>, out: Float64Array): Float64Array;
}

const whites = new Map<LightId, Float64Array>();

/** XYZ of the light itself, Y = 100. */
export function whiteOf(light: LightId): Float64Array {
  let white = whites.get(light);
  if (!white) {
    white = Float64Array.from(observer, bar => weightedSum(light, bar));
    const scale = 100 / white[1];
    whites.set(light, (white = white.map(value => value * scale)));
  }
  return white;
}

function weightedSum(light: LightId, bar: Float64Array): number {
  const power = distribution(light);
  return bar.reduce((sum, value, i) => sum + value * power[i], 0);
}

/** CAT16 from a light to the D50 of the ICC profile connection space. */
export const toD50 = (light: LightId): Matrix3 => cat16(whiteOf(light), D50);

const views = new Map<string, SpectralView>();

/**
 * Weights for one light and sampling, worked out once: every spectrum then costs three sums over its own samples.
 * Between samples by third-order Lagrange interpolation to 5 nm (second-order in the first and last interval), as
 * ASTM E2022 makes weighting factors; beyond its ends a spectrum keeps its end value (CIE 015:2018, 7.2.3).
 */
export function spectralView(light: LightId, sampling: Sampling): SpectralView {
  const key = `${light} ${sampling.from} ${sampling.step} ${sampling.count}`;
  let view = views.get(key);
  if (!view) views.set(key, (view = makeView(light, sampling)));
  return view;
}

function makeView(light: LightId, sampling: Sampling): SpectralView {
  const [x, y, z] = tristimulusWeights(light, sampling);
  const adapt = toD50(light);
  const { count } = sampling;
  const xyz = (spectrum: ArrayLike<number>, out: Float64Array) => {
    let X = 0;
    let Y = 0;
    let Z = 0;
    for (let i = 0; i < count; i++) {
      X += x[i] * spectrum[i];
      Y += y[i] * spectrum[i];
      Z += z[i] * spectrum[i];
    }
    out[0] = X;
    out[1] = Y;
    out[2] = Z;
    return out;
  };
  return {
    xyz,
    lab: (spectrum, out) => xyzToLab(apply(adapt, xyz(spectrum, out), out), out),
  };
}

function tristimulusWeights(light: LightId, sampling: Sampling): Float64Array[] {
  const power = distribution(light);
  const scale = 100 / weightedSum(light, observer[1]);
  const at = new Int32Array(4);
  const share = new Float64Array(4);
  return observer.map(bar => {
    const weights = new Float64Array(sampling.count);
    for (let i = 0; i < COUNT; i++) {
      const points = lagrange(sampling, FROM + i * STEP, at, share);
      for (let j = 0; j < points; j++) weights[at[j]] += share[j] * power[i] * bar[i] * scale;
    }
    return weights;
  });
}

/** The samples, and each one's share, that make the value at `nm`; returns how many there are. */
function lagrange({ from, step, count }: Sampling, nm: number, at: Int32Array, share: Float64Array): number {
  const position = (nm - from) / step;
  if (position <= 0 || position >= count - 1 || Number.isInteger(position)) {
    at[0] = Math.min(count - 1, Math.max(0, position));
    share[0] = 1;
    return 1;
  }
  const below = Math.floor(position);
  const low = Math.max(0, below - 1);
  const high = Math.min(count - 1, below + 2);
  for (let i = low; i <= high; i++) {
    let product = 1;
    for (let j = low; j <= high; j++) if (j !== i) product *= (position - j) / (i - j);
    at[i - low] = i;
    share[i - low] = product;
  }
  return high - low + 1;
}
