import type { LightId, Target } from '../shared/target';
import { type GreyAim, greyAim } from './aim';
import { pressData } from './data';
import { inkModel } from './inks/model';
import { type BlackGeneration, type NeutralAxis, neutralAxis } from './inks/separation';
import type { PrintModel } from './model';
import { type Paper, paperOf } from './papers';
import type { Process } from './process';
import { processOf } from './processes';
import { type Reference, referenceOf } from './reference';

/** A process on a paper in a light, with all that a forecast needs of it. */
export interface Press {
  process: Process;
  paper: Paper;
  light: LightId;
  /** Under D50, and under the light (the same object where that is D50). */
  daylight: PrintModel;
  model: PrintModel;
  /** Grey aims under D50 and under the light. */
  daylightAim: GreyAim;
  aim: GreyAim;
  reference: Reference;
  /** The press's own separation to its grey aim. */
  axis(generation: BlackGeneration): NeutralAxis;
}

type PressTarget = Pick<Target, 'process' | 'paper' | 'light' | 'inkLimit'>;

const presses = new Map<string, Press>();
/** A user's own papers could fill the memory of an editor that is never closed. */
const KEPT = 200;

/** The press of a target; made on first use, then kept. Throws if the process or paper is not known. */
export function pressOf(target: PressTarget): Press {
  const key = JSON.stringify([target.process, target.paper, target.light, target.inkLimit]);
  let press = presses.get(key);
  if (!press) {
    if (presses.size >= KEPT) presses.clear();
    press = makePress(target);
    presses.set(key, press);
  }
  return press;
}

function makePress(target: PressTarget): Press {
  const process = processOf(target.process);
  const paper = paperOf(target.paper);
  const inkLimit = target.inkLimit ?? process.inkLimit ?? 400;
  const daylight = daylightModel(process, paper);
  const model = daylight;
  const axes = new Map<string, NeutralAxis>();
  return {
    process,
    paper,
    light: target.light,
    daylight,
    model,
    daylightAim: aimOf(daylight),
    aim: aimOf(model),
    reference: referenceOf(daylight),
    axis(generation) {
      let axis = axes.get(generation.id);
      if (!axis) {
        axis = neutralAxis(daylight, generation, inkLimit);
        axes.set(generation.id, axis);
      }
      return axis;
    },
  };
}

function daylightModel(process: Process, paper: Paper): PrintModel {
  const { model, sources, guesses } = process;
  const ground = [...sources, ...guesses.map(guess => `a guess: ${guess}`)];
  if (model.kind === 'dyes') throw new Error('dyes are not there yet');
  const table = (paper.id !== 'measured' && model.byPaper?.[paper.id]) || model.table;
  return inkModel({
    table: pressData(table),
    paper: paper.white,
    darkest: model.darkest,
    scatter: model.scatter,
    ground,
  });
}

/** Grey aim of a model: its darkest grey without black is C = M = Y = 100 %, on photographic paper R = G = B = 0. */
function aimOf(model: PrintModel): GreyAim {
  const lab = new Float64Array(3);
  model.lab(model.dimensions === 4 ? [1, 1, 1, 0] : [0, 0, 0], null, lab);
  return greyAim(model.white, lab[0]);
}
