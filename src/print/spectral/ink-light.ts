import { spectralView } from '../../colour/spectra';
import type { LightId } from '../../shared/target';
import type { LightShift } from '../model';
import { brightenerExcess } from './brightener';
import { colouredGrey, flatBlack, type GreyInk, greyOnPaper } from './grey-spectra';
import {
  type PaperSpectrum,
  paperSpectrum,
  paperWhite,
  printRadiance,
  type SpectralPaper,
} from './paper-spectrum';
import { GRID } from './sampling';

export interface InkLightParts {
  paper: SpectralPaper;
  light: LightId;
  /** The light whose ultraviolet excites the brightener where that is another one. */
  ultraviolet?: LightId;
  /** True where the toner's spectra stand in for inks that nobody measured. */
  borrowed: boolean;
}

/** One SD as a share of the shift of coloured inks itself: their own spectra on one press, or borrowed (own choice). */
const OWN = 0.25;
const BORROWED = 1;
/** One SD of how far the brightener's share of a grey is off (own choice). */
const BRIGHTENER = 0.25;
/** Blacks are not quite flat: one SD of a* and b* of a black grey under another light (own choice). */
const BLACK = 0.15;

const STEP = 2.5;
const COUNT = 100 / STEP + 1;

/**
 * How greys of inks change from D50 to another light, on any paper: the measured spectra of liquid-toner greys, a flat
 * black, and the paper's brightener, which fades with depth. Worked out once at 41 lightnesses.
 */
export function inkLightShift(parts: InkLightParts): LightShift {
  const { paper, light, ultraviolet = light, borrowed } = parts;
  const same = light === 'D50' && ultraviolet === 'D50';
  const paperLightness = paper.white[0];
  let tables: Tables | null = null;
  /** What black alone, and what coloured inks beside black, do at L to L*, a* or b* (i = 0, 1, 2). */
  const at = (L: number, i: number) => {
    tables ??= shiftTables(paper, light, ultraviolet);
    const position = Math.min(COUNT - 1, Math.max(0, L / STEP));
    const k = Math.min(COUNT - 2, Math.floor(position));
    const t = position - k;
    const of = (table: Float64Array) => (1 - t) * table[k * 3 + i] + t * table[k * 3 + 3 + i];
    const black = of(tables.black);
    return { black, inks: of(tables.coloured) - black };
  };
  return {
    white: paperWhite(paper, light, ultraviolet),
    shift(L, coloured, out) {
      for (let i = 0; i < 3; i++) {
        if (same) out[i] = 0;
        else {
          const { black, inks } = at(L, i);
          out[i] = black + coloured * inks;
        }
      }
    },
    spread(L, coloured) {
      const depth = Math.min(1, Math.max(0, (paperLightness - L) / 20));
      const of = (i: number) => {
        const { black, inks } = at(L, i);
        return depth * Math.hypot(BLACK, BRIGHTENER * black, (borrowed ? BORROWED : OWN) * coloured * inks);
      };
      return same ? { a: 0, b: 0 } : { a: of(1), b: of(2) };
    },
    ground: ground(parts),
  };
}

/** Changes of L*, a*, b* at each lightness of the grid; above the paper's own lightness, those of the paper. */
interface Tables {
  black: Float64Array;
  coloured: Float64Array;
}

function shiftTables(paper: InkLightParts['paper'], light: LightId, ultraviolet: LightId): Tables {
  const spectrum = paperSpectrum(paper);
  const greys = greysOn(spectrum, paper.white[0]);
  const of = (transmittances: Float64Array[]) => shifts(transmittances, spectrum, light, ultraviolet);
  return { black: of(greys.black), coloured: of(greys.coloured) };
}

const known = new WeakMap<PaperSpectrum, Record<keyof Tables, Float64Array[]>>();

/** The greys of the grid on a paper: the same under every light. */
function greysOn(paper: PaperSpectrum, white: number) {
  let greys = known.get(paper);
  if (!greys) {
    const of = (ink: GreyInk) =>
      Array.from({ length: COUNT }, (_, k) =>
        greyOnPaper(ink, paper, Math.min(Math.max(k, 1) * STEP, white)),
      );
    known.set(paper, (greys = { black: of(flatBlack), coloured: of(colouredGrey) }));
  }
  return greys;
}

function shifts(
  greys: Float64Array[],
  paper: PaperSpectrum,
  light: LightId,
  ultraviolet: LightId,
): Float64Array {
  const [d50, view] = [spectralView('D50', GRID), spectralView(light, GRID)];
  const [daylight, excess] = [brightenerExcess('D50'), brightenerExcess(ultraviolet)];
  const table = new Float64Array(COUNT * 3);
  const spectrum = new Float64Array(GRID.count);
  const [before, after] = [new Float64Array(3), new Float64Array(3)];
  greys.forEach((transmittance, k) => {
    d50.lab(printRadiance(paper, daylight, transmittance, spectrum), before);
    view.lab(printRadiance(paper, excess, transmittance, spectrum), after);
    for (let i = 0; i < 3; i++) table[k * 3 + i] = after[i] - before[i];
  });
  return table;
}

function ground({ light, paper, borrowed }: InkLightParts): string[] {
  if (light === 'D50') return [];
  const sentences = [
    borrowed
      ? 'a guess: under this light the inks are taken to change as the greys of one liquid-toner press do (A. Beltrami 2022), for want of their own spectra; black ink is taken as flat'
      : 'under this light: measured spectra of greys of one liquid-toner press (A. Beltrami 2022, CC BY-SA 4.0); black is taken as flat',
  ];
  if (paper.brightener !== 'none')
    sentences.push(
      "the paper's brightener under this light: computed from bispectral measurements of another brightened paper",
    );
  return sentences;
}
