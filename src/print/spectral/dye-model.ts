import type { AB } from '../../shared/forecast';
import type { LightId } from '../../shared/target';
import { greyAim } from '../aim';
import type { Drift, PrintModel } from '../model';
import type { Paper } from '../papers';
import type { DyeProcess } from '../process';
import { type DyePrint, dyePrint } from './dye-print';
import { amountsOn, type DyeScale, dyeScale } from './dye-scale';
import { dyeLightSpread } from './dye-spread';
import { type DyeSet, dyeSet } from './dyes';
import { type PaperSpectrum, paperSpectrum, paperWhite } from './paper-spectrum';

/** Density above which a layer follows a drift of exposure fully; a bare paper cannot drift (own simplification). */
const TOE = 0.12;
/** Borrowed dyes are this much less sure under other lights (own choice). */
const BORROWED = 2;

export interface DyeModelParts {
  process: DyeProcess;
  paper: Pick<Paper, 'white' | 'brightener'>;
  light: LightId;
  /** The light whose ultraviolet excites the brightener where that is another one. */
  ultraviolet?: LightId;
  ground: readonly string[];
}

/**
 * Photographic print of R, G, B: three dyes by Beer-Lambert over the paper, calibrated so that R = G = B meets the grey
 * aim under D50 at every level, seen under a light by an observer adapted to it. Drift: density of each layer.
 * Throws where the process's black or the paper is out of the dyes' reach.
 */
export function dyeModel({ process, paper, light, ultraviolet = light, ground }: DyeModelParts): PrintModel {
  const { flare } = process;
  const set = dyeSet(process.dyes);
  const spectrum = paperSpectrum(paper);
  const aim = greyAim([paper.white[0], paper.white[1], paper.white[2]], process.black);
  const scale = calibrated(process, paper, set, spectrum);
  const print: DyePrint = dyePrint({ dyes: set.mean, paper: spectrum, flare, light, ultraviolet });
  const amounts = new Float64Array(3);
  let lightSpread: ((L: number) => AB) | null = null;
  return {
    dimensions: 3,
    drifts: layers(process),
    white: paperWhite(paper, light, ultraviolet),
    lab(device, drift, out) {
      amountsOn(scale, device, amounts);
      if (drift) for (let i = 0; i < 3; i++) amounts[i] += drift[i] * (1 - Math.exp(-amounts[i] / TOE));
      print.lab(amounts, out);
    },
    dataSpread(L) {
      lightSpread ??= dyeLightSpread({ set, paper: spectrum, white: paper.white[0], flare, aim, light });
      const under = lightSpread(L);
      const borrowed = process.borrowed ? BORROWED : 1;
      const share = responseAt(L, paper.white[0]);
      return {
        a: Math.hypot(process.unknownDyes.a * share, under.a * borrowed),
        b: Math.hypot(process.unknownDyes.b * share, under.b * borrowed),
      };
    },
    ground,
  };
}

const layers = ({ density }: DyeProcess): Drift[] =>
  ['cyan', 'magenta', 'yellow'].map(name => ({ name: `${name} dye`, unit: 'density', ...density }));

/** How far a change of density moves a grey, 1 in the mid-tones: less in the shadows, nothing on bare paper. */
const responseAt = (L: number, white: number) =>
  Math.min(1, Math.max(0, L / 65)) * Math.min(1, Math.max(0, (white - L) / 20));

const scales = new Map<string, DyeScale>();
/** A user's own papers could fill the memory of an editor that is never closed. */
const KEPT = 100;

/** The calibration is the same under every light, and is kept. */
function calibrated(
  { dyes, black, flare }: DyeProcess,
  paper: Pick<Paper, 'white' | 'brightener'>,
  set: DyeSet,
  spectrum: PaperSpectrum,
): DyeScale {
  const key = `${dyes} ${black} ${flare} ${paper.white} ${paper.brightener}`;
  let scale = scales.get(key);
  if (!scale) {
    if (scales.size >= KEPT) scales.clear();
    const daylight = dyePrint({ dyes: set.mean, paper: spectrum, flare, light: 'D50' });
    const aim = greyAim([paper.white[0], paper.white[1], paper.white[2]], black);
    scales.set(key, (scale = dyeScale(daylight, paper.white[0], black, aim)));
  }
  return scale;
}
