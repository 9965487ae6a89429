import { idleNotice } from '../book/idle-settings';
import type { BookReport, Slip } from '../shared/finding';
import type { Place } from './place';
import type { Trouble } from './trouble';

/** A slip of the settings, with where it stands as a `Place` names files; null: not in the repository. */
export interface PlacedSlip {
  slip: Slip;
  at: Trouble['at'];
}

/** What the settings say in vain, for services that show it on its line, and the notices that are left then. */
export function slipsApart(
  { slips = [], notices }: Readonly<Pick<BookReport, 'slips' | 'notices'>>,
  { folder }: Pick<Place, 'folder'>,
): { slips: PlacedSlip[]; notices: string[] } {
  const told = new Set(slips.map(slip => idleNotice({ message: slip.message, at: slip })));
  return {
    slips: slips.map(slip => ({ slip, at: placed(slip, folder) })),
    notices: notices.filter(notice => !told.has(notice)),
  };
}

/** Settings that were named may lie outside of the book. */
const placed = ({ file, line, column }: Slip, folder: string): Trouble['at'] =>
  file.startsWith('../') ? null : { file: folder + file, line, column };
