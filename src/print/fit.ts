import type { MeasuredPaper, PaperId, ProcessId, Target } from '../shared/target';
import { type Paper, paperOf } from './papers';
import type { Process } from './process';
import { processOf } from './processes';

/** Why a forecast of this process on this paper says little: no such paper is made for it. Null where there are such papers. */
export function misfit(process: Process, { surface }: Paper): string | null {
  if (surface === 'measured' || process.surfaces.includes(surface)) return null;
  return `no such paper is made for ${process.inSentence}: the figures only move the paper's colour, a guess`;
}

/** The same for the names in settings. */
export const paperProblem = (process: ProcessId, paper: PaperId | MeasuredPaper): string | null =>
  misfit(processOf(process), paperOf(paper));

/** What the press is sent in the end: inks, or R, G, B where the process or the print house's profile takes them. */
export const signalOf = ({ process, pressProfile }: Target): Process['signal'] =>
  pressProfile?.space === 'rgb' ? 'rgb' : processOf(process).signal;

/** Why a named route says nothing of a target: it takes inks, or R, G, B, and the route makes the other. Else null. */
export function routeProblem(target: Target): string | null {
  const { process, route } = target;
  const signal = signalOf(target);
  if (route === 'unknown' || (signal === 'rgb') === (route === 'rgb')) return null;
  return `the route "${route}" cannot apply on ${processOf(process).inSentence}: forecast there as "${signal === 'rgb' ? 'rgb' : 'separated'}"`;
}
