import type { AB } from '../../shared/forecast';
import type { LightId } from '../../shared/target';
import { greyAim } from '../aim';
import type { Drift, PrintModel } from '../model';
import type { DyeProcess } from '../process';
import { dyeLightChange } from './dye-light';
import { dyePrint } from './dye-print';
import { amountsOn, type DyeScale, dyeScale } from './dye-scale';
import { dyeLightSpread } from './dye-spread';
import { dyeSet } from './dyes';
import { paperSpectrum, paperWhite, type SpectralPaper } from './paper-spectrum';

/** Density above which a layer follows a drift of exposure fully; a bare paper cannot drift (own simplification). */
const TOE = 0.12;

export interface DyeModelParts {
  process: DyeProcess;
  /** Taken for a photographic paper whatever its own surface: such a process prints on no other. */
  paper: SpectralPaper;
  light: LightId;
  /** The light whose ultraviolet excites the brightener where that is another one. */
  ultraviolet?: LightId;
  ground: readonly string[];
}

/**
 * Photographic print of R, G, B: three dyes by Beer-Lambert over the paper, calibrated so that R = G = B meets the grey
 * aim under D50 at every level; another light changes that as `dyeLightChange` says. Drift: density of each layer.
 * Throws where the process's black or the paper is out of the dyes' reach.
 */
export function dyeModel(parts: DyeModelParts): PrintModel {
  const { process, light, ultraviolet = light } = parts;
  const paper: SpectralPaper = { ...parts.paper, surface: 'photographic' };
  const { flare, unknownDyes } = process;
  const dyes = dyeSet(process.dyes).mean;
  const spectrum = paperSpectrum(paper);
  const aim = aimOn(paper, process);
  const scale = calibrated(process, paper);
  const print = dyePrint({ dyes, paper: spectrum, flare, light: 'D50' });
  const lit = { dyes: process.dyes, paper: spectrum, light, ultraviolet };
  const change = light === 'D50' && ultraviolet === 'D50' ? null : dyeLightChange(lit);
  const changed = new Float64Array(3);
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
      if (!change) return;
      change(amounts, changed);
      for (let i = 0; i < 3; i++) out[i] += changed[i];
    },
    dataSpread(L) {
      const white = paper.white[0];
      lightSpread ??= dyeLightSpread({ ...lit, white, flare, aim, borrowed: process.borrowed });
      const under = lightSpread(L);
      const share = responseAt(L, white);
      return {
        a: Math.hypot(unknownDyes.a * share, under.a),
        b: Math.hypot(unknownDyes.b * share, under.b),
      };
    },
    ground: light === 'D50' ? parts.ground : [...parts.ground, ...lightGround(process)],
  };
}

const lightGround = ({ borrowed }: DyeProcess) => [
  'under this light: half way between generic dyes and a neutral scale measured on chromogenic paper, which do not agree; their difference is in the spread',
  ...(borrowed
    ? ['a guess: under this light the dyes are taken to change as those of chromogenic paper do']
    : []),
];

const aimOn = ({ white }: SpectralPaper, { black }: DyeProcess) =>
  greyAim([white[0], white[1], white[2]], black);

const layers = ({ density }: DyeProcess): Drift[] =>
  ['cyan', 'magenta', 'yellow'].map(name => ({ name: `${name} dye`, unit: 'density', house: 0, ...density }));

/** How far a change of density moves a grey, 1 in the mid-tones: less in the shadows, nothing on bare paper. */
const responseAt = (L: number, white: number) =>
  Math.min(1, Math.max(0, L / 65)) * Math.min(1, Math.max(0, (white - L) / 20));

const scales = new Map<string, DyeScale>();
/** A user's own papers could fill the memory of an editor that is never closed. */
const KEPT = 100;

/** The calibration is the same under every light, and is kept. */
function calibrated(process: DyeProcess, paper: SpectralPaper): DyeScale {
  const { dyes, black, flare } = process;
  const key = `${dyes} ${black} ${flare} ${paper.white} ${paper.brightener}`;
  let scale = scales.get(key);
  if (!scale) {
    if (scales.size >= KEPT) scales.clear();
    const parts = { dyes: dyeSet(dyes).mean, paper: paperSpectrum(paper), flare };
    const daylight = dyePrint({ ...parts, light: 'D50' });
    scales.set(key, (scale = dyeScale(daylight, paper.white[0], black, aimOn(paper, process))));
  }
  return scale;
}
