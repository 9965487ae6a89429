import { defaultTarget } from '../print';
import type { LightId, PaperId, ProcessId, Target } from '../shared/target';

/** Conditions that a person asks for on the spot. */
export interface Overrides {
  process?: ProcessId;
  paper?: PaperId;
  light?: LightId;
}

/**
 * The targets under other conditions. Another process takes those of the book's targets that are printed by it, else
 * stands alone with everything at its default: what one print house takes says nothing of another.
 */
export function override(targets: readonly Target[], { process, paper, light }: Overrides): Target[] {
  const ofProcess = process ? targets.filter(target => target.process === process) : targets;
  const chosen = ofProcess.length || !process ? ofProcess : [defaultTarget(process)];
  return chosen.map(target => ({ ...target, paper: paper ?? target.paper, light: light ?? target.light }));
}
