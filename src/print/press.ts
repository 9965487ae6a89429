import type { LightId, Target } from '../shared/target';
import { type GreyAim, greyAim } from './aim';
import { pressData } from './data';
import { inkModel } from './inks/model';
import { type BlackGeneration, type NeutralAxis, neutralAxis } from './inks/separation';
import { tonerOffset } from './inks/toner-offset';
import { underLight } from './inks/under-light';
import type { LightShift, PrintModel } from './model';
import { type Paper, paperOf } from './papers';
import type { Process } from './process';
import { processOf } from './processes';
import { type Reference, referenceOf } from './reference';
import { dyeModel } from './spectral/dye-model';
import { inkLightShift } from './spectral/ink-light';

/** A process on a paper in a light, with all that a forecast needs of it. */
export interface Press {
  process: Process;
  paper: Paper;
  light: LightId;
  /** Under D50, and under the light (the same object where that is D50). */
  daylight: PrintModel;
  model: PrintModel;
  /** What the light changes where the model is that of D50 and a change; null for models made for the light itself. */
  shift: LightShift | null;
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
  if (target.light !== 'D50') return underOtherLight(pressOf({ ...target, light: 'D50' }), target.light);
  const process = processOf(target.process);
  const paper = paperOf(target.paper);
  const inkLimit = target.inkLimit ?? process.inkLimit ?? 400;
  const model = daylightModel(process, paper);
  const aim = aimOf(model);
  const axes = new Map<string, NeutralAxis>();
  return {
    process,
    paper,
    light: 'D50',
    daylight: model,
    model,
    shift: null,
    daylightAim: aim,
    aim,
    reference: referenceOf(model),
    axis(generation) {
      let axis = axes.get(generation.id);
      if (!axis) {
        axis = neutralAxis(model, generation, inkLimit);
        axes.set(generation.id, axis);
      }
      return axis;
    },
  };
}

function underOtherLight(press: Press, light: LightId): Press {
  const { process, paper, daylight } = press;
  const shift =
    process.model.kind === 'inks' ? inkLightShift({ paper, light, borrowed: !process.model.offset }) : null;
  const model =
    process.model.kind === 'dyes'
      ? dyeModel({ process: process.model, paper, light, ground: groundOf(process) })
      : underLight(daylight, shift!);
  return { ...press, light, model, shift, aim: aimOf(model) };
}

function daylightModel(process: Process, paper: Paper): PrintModel {
  const { model } = process;
  const ground = groundOf(process);
  if (model.kind === 'dyes') return dyeModel({ process: model, paper, light: 'D50', ground });
  const table = pressData((paper.id !== 'measured' && model.byPaper?.[paper.id]) || model.table);
  return inkModel({
    table,
    paper: paper.white,
    darkest: model.darkest,
    scatter: model.scatter,
    offset: model.offset && tonerOffset(table),
    ground,
  });
}

const groundOf = ({ sources, guesses }: Process) => [
  ...sources,
  ...guesses.map(guess => `a guess: ${guess}`),
];

/** Grey aim of a model: its darkest grey without black is C = M = Y = 100 %, on photographic paper R = G = B = 0. */
function aimOf(model: PrintModel): GreyAim {
  const lab = new Float64Array(3);
  model.lab(model.dimensions === 4 ? [1, 1, 1, 0] : [0, 0, 0], null, lab);
  return greyAim(model.white, lab[0]);
}
