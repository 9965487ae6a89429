import type { MeasuredPaper, PaperId, ProcessId } from '../shared/target';
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
