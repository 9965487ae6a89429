import type { Basis } from '../shared/forecast';
import type { LightId, Target } from '../shared/target';
import { type GreyAim, greyAim } from './aim';
import { type BlackGeneration, blackGenerations, type NeutralAxis, neutralAxis } from './inks/separation';
import type { PrintModel } from './model';
import { type Paper, paperOf } from './papers';
import { genericPrinting, type LitModel, type Printing } from './printing';
import type { Process } from './process';
import { processOf } from './processes';
import { profileGeneration } from './profile/axis';
import { profilePrinting } from './profile/printing';
import { readPaper } from './record/paper';
import { type Reference, referenceOf } from './reference';

/** How prints look under a light. */
export interface View extends LitModel {
  aim: GreyAim;
}

/** A process on a paper in a light, with all that a forecast needs of it. */
export interface Press extends View {
  process: Process;
  basis: Basis;
  paper: Paper;
  light: LightId;
  /** Under D50; the same object as `model` where that is the light. */
  daylight: PrintModel;
  daylightAim: GreyAim;
  reference: Reference;
  /** The separations that this press may use, by weight. */
  generations: readonly BlackGeneration[];
  /** The press's own separation to its grey aim, or the one in the print house's profile. */
  axis(generation: BlackGeneration): NeutralAxis;
  /** The condition that separations are made for: this press, unless the target names another. */
  separation: Separation;
  /** Under the light, the paper's brightener shining as under D50; null where that changes nothing. */
  withoutBrightener: View | null;
  under: Printing['under'];
}

/** A condition that pictures are separated for. */
export interface Separation {
  /** L* of its paper. */
  white: number;
  axis(generation: BlackGeneration): NeutralAxis;
}

type PressTarget = Pick<
  Target,
  'process' | 'paper' | 'light' | 'inkLimit' | 'pressProfile' | 'printRecord' | 'separatedFor'
>;

const presses = new Map<string, Press>();
/** A user's own papers could fill the memory of an editor that is never closed. */
const KEPT = 200;

/**
 * The press of a target; made on first use, then kept. Throws if the process or paper is not known, or the profile is not
 * one for this process (`profileProblem` tells beforehand).
 */
export function pressOf(target: PressTarget): Press {
  const { process, paper, light, inkLimit, pressProfile, printRecord, separatedFor } = target;
  const key = JSON.stringify([
    process,
    paper,
    light,
    inkLimit,
    pressProfile?.id,
    printRecord?.paper,
    separatedFor,
  ]);
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
  const paper = readPaper(paperOf(target.paper), target.printRecord);
  const printing = target.pressProfile
    ? profilePrinting(process, paper, target.pressProfile)
    : genericPrinting(process, paper);
  const inkLimit = target.inkLimit ?? process.inkLimit ?? 400;
  const { daylight: model } = printing;
  const aim = aimOf(model);
  const axes = new Map<string, NeutralAxis>();
  const own: Separation = {
    white: model.white[0],
    axis(generation) {
      if (printing.axis) return printing.axis;
      let axis = axes.get(generation.id);
      if (!axis) {
        axis = neutralAxis(model, generation, inkLimit);
        axes.set(generation.id, axis);
      }
      return axis;
    },
  };
  return {
    ...printing,
    light: 'D50',
    model,
    shift: null,
    withoutBrightener: null,
    daylightAim: aim,
    aim,
    reference: referenceOf(model),
    generations: printing.axis && !target.separatedFor ? [profileGeneration] : blackGenerations,
    axis: own.axis,
    separation: otherSeparation(target) ?? own,
  };
}

/** The separation of another condition, where the target names one and its press takes inks. */
function otherSeparation({ separatedFor }: PressTarget): Separation | null {
  if (!separatedFor) return null;
  if (processOf(separatedFor.process).signal === 'rgb')
    throw new Error(`nothing is separated into inks for ${processOf(separatedFor.process).name}`);
  return pressOf({ ...separatedFor, light: 'D50', inkLimit: null }).separation;
}

function underOtherLight(press: Press, light: LightId): Press {
  const view = (ultraviolet?: LightId): View => {
    const lit = press.under(light, ultraviolet);
    return { ...lit, aim: aimOf(lit.model) };
  };
  const withoutBrightener = press.paper.brightener === 'none' ? null : view('D50');
  return { ...press, light, ...view(), withoutBrightener };
}

/** Grey aim of a model: its darkest grey without black is C = M = Y = 100 %, on photographic paper R = G = B = 0. */
function aimOf(model: PrintModel): GreyAim {
  const lab = new Float64Array(3);
  model.lab(model.dimensions === 4 ? [1, 1, 1, 0] : [0, 0, 0], null, lab);
  return greyAim(model.white, lab[0]);
}
