import { characterisedInks } from './characterised';
import { patchesOf } from './patches';
import TR003 from './TR003.ti3';
import TR005 from './TR005.ti3';
import TR006 from './TR006.ti3';
import type { InkTable } from './table';

/** Press conditions whose characterisation data are shipped (NOTICE.md). */
export type PressSet = 'TR003' | 'TR005' | 'TR006';

const texts: Record<PressSet, string> = { TR003, TR005, TR006 };
const tables = new Map<PressSet, InkTable>();

/** A measured condition as an ink table: read on first use, then kept. */
export function measuredPress(id: PressSet): InkTable {
  let table = tables.get(id);
  if (!table) tables.set(id, (table = characterisedInks(patchesOf(texts[id]))));
  return table;
}

/** The shipped text itself, for checks against patches that the interpolation does not use. */
export const pressDataText = (id: PressSet): string => texts[id];
