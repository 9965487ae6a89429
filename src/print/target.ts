import type { ProcessId, Target } from '../shared/target';
import { processOf } from './processes';

/** A target with everything at its default: the process's own paper, D50, and the route that nobody stated. */
export function defaultTarget(process: ProcessId): Target {
  const { signal, paper } = processOf(process);
  return {
    name: process,
    process,
    paper,
    light: 'D50',
    route: signal === 'rgb' ? 'rgb' : 'unknown',
    encodings: null,
    inkLimit: null,
    profile: null,
    record: null,
  };
}
