import { luminance } from '../../colour/lab';
import { spectralView } from '../../colour/spectra';
import type { LightId } from '../../shared/target';
import type { Paper } from '../papers';
import { AMOUNT, brightenerAbsorption, brightenerExcess } from './brightener';
import { neutralTarget } from './neutral-target';
import { GRID } from './sampling';
import { solve3 } from './solve';

/** A paper known by its Lab and its brightener class alone, as a spectrum that agrees with both. */
export interface PaperSpectrum {
  /** Reflectance without what the brightener emits, on `GRID`. */
  base: Float64Array;
  /** Brightener, as a share of the strongly brightened white that was measured. */
  amount: number;
}

/** What a spectrum needs of a paper. */
export type SpectralPaper = Pick<Paper, 'white' | 'brightener' | 'surface'>;

const known = new Map<string, PaperSpectrum>();
/** A user's own papers could fill the memory of an editor that is never closed. */
const KEPT = 100;

/**
 * Flat reflectance, less the violet that the brightener and a photographic paper's pigmented resin take up, bent by a
 * smooth curve (a parabola of its logarithm) so that together with the brightener's light it has the paper's Lab under
 * D50. White papers are smooth; the curve stands for fillers, bleaching and shading dyes.
 */
export function paperSpectrum({ white, brightener, surface }: SpectralPaper): PaperSpectrum {
  const resin = surface === 'photographic';
  const key = `${white} ${brightener} ${resin}`;
  let spectrum = known.get(key);
  if (!spectrum) {
    if (known.size >= KEPT) known.clear();
    known.set(key, (spectrum = makeSpectrum(white, AMOUNT[brightener], resin)));
  }
  return spectrum;
}

/** A paper too dark or too yellow for the brightener of its class is taken to hold less. */
function makeSpectrum(white: ArrayLike<number>, amount: number, resin: boolean): PaperSpectrum {
  try {
    return bentTo(white, amount, resin);
  } catch (error) {
    if (amount === 0) throw error;
    return makeSpectrum(white, amount > 0.05 ? amount / 2 : 0, resin);
  }
}

function bentTo(white: ArrayLike<number>, amount: number, resin: boolean): PaperSpectrum {
  const violet = violetOf(resin);
  const view = spectralView('D50', GRID);
  const excess = brightenerExcess('D50');
  const base = new Float64Array(GRID.count);
  const total = new Float64Array(GRID.count);
  const bend = (p: Float64Array) => {
    for (let i = 0; i < base.length; i++) {
      const u = (i - 15) / 15;
      base[i] = (1 - amount * brightenerAbsorption[i]) * violet[i] * Math.exp(p[0] + p[1] * u + p[2] * u * u);
      total[i] = base[i] + amount * excess[i];
    }
  };
  const lab = (p: Float64Array, out: Float64Array) => {
    bend(p);
    view.lab(total, out);
  };
  bend(solve3(lab, white, [Math.log(luminance(white[0]) / 100), 0, 0], 1e-6));
  return { base, amount };
}

/** Reflectance below 440 nm beside that at 440: titanium white in the resin takes violet up, as the measured paper shows. */
function violetOf(resin: boolean): Float64Array {
  const { paper } = neutralTarget();
  return paper.map((value, i) => (resin && i < 4 ? value / paper[4] : 1));
}

/**
 * Radiance factor of a print on the paper, written into `out`. `transmittance`: what dyes or inks let through (there and
 * back), per wavelength of `GRID`. The brightener's light fades with the ultraviolet that still reaches it and with its
 * own way out: the square roots of the transmittance at 400 (for want of 390) and 440 nm (own simplification).
 */
export function printRadiance(
  { base, amount }: PaperSpectrum,
  excess: Float64Array,
  transmittance: ArrayLike<number>,
  out: Float64Array,
): Float64Array {
  const glow = amount * Math.sqrt(transmittance[0] * transmittance[4]);
  for (let i = 0; i < out.length; i++) out[i] = base[i] * transmittance[i] + glow * excess[i];
  return out;
}

const CLEAR = new Float64Array(GRID.count).fill(1);

/**
 * Lab of the bare paper as seen under a light by an observer adapted to it (CAT16 to D50). `ultraviolet`: the light that
 * excites the brightener where that is another one, such as the same lamp's light without its ultraviolet.
 */
export function paperWhite(
  paper: SpectralPaper,
  light: LightId,
  ultraviolet = light,
): [number, number, number] {
  const total = printRadiance(
    paperSpectrum(paper),
    brightenerExcess(ultraviolet),
    CLEAR,
    new Float64Array(GRID.count),
  );
  const [L, a, b] = spectralView(light, GRID).lab(total, new Float64Array(3));
  return [L, a, b];
}

/** How far the bare paper moves in CIELAB from D50 to another light, its brightener with it. */
export function brightenerShift(paper: SpectralPaper, light: LightId): { L: number; a: number; b: number } {
  const [L, a, b] = paperWhite(paper, light);
  return { L: L - paper.white[0], a: a - paper.white[1], b: b - paper.white[2] };
}
