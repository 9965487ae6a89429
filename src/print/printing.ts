import type { Basis } from '../shared/forecast';
import type { LightId } from '../shared/target';
import { pressData, pressDataError } from './data';
import { misfit } from './fit';
import { inkModel } from './inks/model';
import type { NeutralAxis } from './inks/separation';
import { tonerOffset } from './inks/toner-offset';
import { underLight } from './inks/under-light';
import type { LightShift, PrintModel } from './model';
import type { Paper } from './papers';
import type { Process } from './process';
import { dyeModel } from './spectral/dye-model';
import { inkLightShift } from './spectral/ink-light';

/** How a process prints on a paper: under D50, and under any other light. */
export interface Printing {
  process: Process;
  basis: Basis;
  /** The paper that is printed on in the end. */
  paper: Paper;
  daylight: PrintModel;
  /** `ultraviolet`: the light whose ultraviolet excites the paper's brightener where that is another one. */
  under(light: LightId, ultraviolet?: LightId): LitModel;
  /** The neutral axis where it is given; null: solved on the model. */
  axis: NeutralAxis | null;
}

export interface LitModel {
  model: PrintModel;
  /** What the light changes where the model is that of D50 and a change; null for models made for the light itself. */
  shift: LightShift | null;
}

/** A process as its kind prints: by dyes or by inks, without anything of the print house's own. */
export function genericPrinting(process: Process, paper: Paper): Printing {
  const doubt = misfit(process, paper);
  const common = { process, basis: doubt ? ('generic' as const) : process.basis, paper, axis: null };
  const ground = [...(doubt ? [doubt] : []), ...groundOf(process)];
  const { model } = process;
  if (model.kind === 'dyes') {
    const lit = (light: LightId, ultraviolet = light) =>
      dyeModel({ process: model, paper, light, ultraviolet, ground });
    return {
      ...common,
      daylight: lit('D50'),
      under: (light, ultraviolet) => ({ model: lit(light, ultraviolet), shift: null }),
    };
  }
  const id = (paper.id !== 'measured' && model.byPaper?.[paper.id]) || model.table;
  const table = pressData(id);
  const daylight = inkModel({
    table,
    paper: paper.white,
    darkest: model.darkestOn?.[paper.surface] ?? model.darkest,
    scatter: model.scatter,
    offset: model.offset && tonerOffset(table),
    tableError: pressDataError(id) ?? undefined,
    ground,
  });
  return { ...common, daylight, under: inksUnder(daylight, process, paper) };
}

/** Inks known under D50, as they look under another light. */
export function inksUnder(daylight: PrintModel, { model }: Process, paper: Paper): Printing['under'] {
  const borrowed = !(model.kind === 'inks' && model.offset);
  return (light, ultraviolet) => {
    const shift = inkLightShift({ paper, light, ultraviolet, borrowed });
    return { model: underLight(daylight, shift), shift };
  };
}

export const groundOf = ({ sources, guesses }: Process): string[] => [...sources, ...guesses.map(guessWords)];

const guessWords = (guess: Process['guesses'][number]): string =>
  `a guess: ${typeof guess === 'string' ? guess : guess.ofBlack}`;

/** The same without what is no guess where the darkest black was read from prints. */
export function withBlackRead(ground: readonly string[], { guesses }: Process): string[] {
  const answered = guesses.filter(guess => typeof guess !== 'string').map(guessWords);
  return ground.filter(line => !answered.includes(line));
}
