import type { ProcessId } from '../../shared/target';
import type { Process } from '../process';
import dryToner from './dry-toner.json';
import dyeTransfer from './dye-transfer.json';
import inkjet from './inkjet.json';
import liquidToner from './liquid-toner.json';
import offsetCoated from './offset-coated.json';
import offsetUncoated from './offset-uncoated.json';
import silverHalide from './silver-halide.json';

/** Every process that can be forecast. A new one is a file here. */
export const processes = [
  silverHalide,
  liquidToner,
  dryToner,
  inkjet,
  dyeTransfer,
  offsetCoated,
  offsetUncoated,
] as unknown as readonly Process[];

export function processOf(id: ProcessId): Process {
  const known = processes.find(process => process.id === id);
  if (!known) throw new Error(`no process "${id}"; known are ${processes.map(p => p.id).join(', ')}`);
  return known;
}
