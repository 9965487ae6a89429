import type { PressProfile } from '../../shared/target';
import { inkModel } from '../inks/model';
import { blackGenerations, inksOnAxis, neutralAxis } from '../inks/separation';
import type { PrintModel } from '../model';
import type { Paper } from '../papers';
import { genericPrinting, inksUnder, type Printing } from '../printing';
import type { Process } from '../process';
import { profileAxis } from './axis';
import { aroundProfile, profileModel, profileTable } from './model';
import { profilePaper } from './paper';

/** Why the profile cannot serve the process, in plain words; null where it can. */
export function profileProblem(process: Process, profile: PressProfile): string | null {
  if (profile.space === 'cmyk' && process.signal === 'rgb')
    return `the ICC profile "${profile.description}" is for four inks, but ${process.name} takes R, G, B: name another process, or ask the print house for its RGB profile`;
  return null;
}

/**
 * The process by the print house's own profile: colour, paper, black and, for four inks, the separation are the
 * profile's; drift and what a light changes stay those of the process.
 * Throws where the profile is not one for this process.
 */
export function profilePrinting(process: Process, target: Paper, profile: PressProfile): Printing {
  const problem = profileProblem(process, profile);
  if (problem) throw new Error(problem);
  const paper = profilePaper(profile, target);
  const ground = [
    `the print house's profile "${profile.description}"`,
    `a guess: how the press drifts around its profile, taken from the process in general (${process.name})`,
  ];
  if (profile.space === 'cmyk') return fourInks(process, paper, profile, ground);
  const generic = genericPrinting(process, paper);
  const shape = shapeOf(process, profile.space, generic.daylight);
  const model = (lit: PrintModel) =>
    profileModel({
      ...shape,
      profile,
      white: paper.white,
      daylight: generic.daylight,
      generic: lit,
      ground: [...ground, ...lit.ground.filter(sentence => !generic.daylight.ground.includes(sentence))],
    });
  return {
    process: profile.space === 'rgb' ? { ...process, signal: 'rgb' } : process,
    basis: 'profile',
    paper,
    daylight: model(generic.daylight),
    under: (light, ultraviolet) => ({ model: model(generic.under(light, ultraviolet).model), shift: null }),
    axis: null,
  };
}

function fourInks(process: Process, paper: Paper, profile: PressProfile, ground: string[]): Printing {
  if (process.model.kind !== 'inks') throw new Error(`${process.name} prints without inks`);
  const scatter = aroundProfile(process.model.scatter);
  const daylight = inkModel({ table: profileTable(profile), paper: paper.white, scatter, ground });
  return {
    process,
    basis: 'profile',
    paper,
    daylight,
    under: inksUnder(daylight, process, paper),
    axis: profileAxis(profile, daylight),
  };
}

/** How device values go to the profile and to the generic process that lends its drift. */
function shapeOf(process: Process, space: 'grey' | 'rgb', generic: PrintModel) {
  const mean = (rgb: ArrayLike<number>) => (rgb[0] + rgb[1] + rgb[2]) / 3;
  const same = (device: ArrayLike<number>) => device;
  if (space === 'grey')
    return process.signal === 'rgb'
      ? {
          dimensions: 3 as const,
          toProfile: (rgb: ArrayLike<number>) => [mean(rgb)],
          toGeneric: same,
          withoutColour: (rgb: ArrayLike<number>) => Array(3).fill(mean(rgb)),
        }
      : {
          dimensions: 4 as const,
          toProfile: (inks: ArrayLike<number>) => [1 - inks[3]],
          toGeneric: same,
          withoutColour: (inks: ArrayLike<number>) => [0, 0, 0, inks[3]],
        };
  if (process.signal === 'rgb') return { dimensions: 3 as const, toProfile: same, toGeneric: same };
  const axis = neutralAxis(generic, blackGenerations[1], process.inkLimit ?? 400);
  const inks = new Float64Array(4);
  return {
    dimensions: 3 as const,
    toProfile: same,
    toGeneric(_: ArrayLike<number>, L: number) {
      inksOnAxis(axis, L, inks);
      return inks;
    },
  };
}
