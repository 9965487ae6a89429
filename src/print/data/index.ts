import { labToXyz } from '../../colour/lab';
import { measuredPress, type PressSet } from '../../colour/press';
import type { InkTable } from '../../colour/press/table';
import type { AB } from '../../shared/forecast';
import { type PublishedCondition, publishedInks } from '../inks/published';
import published from './uncoated.json';

type PublishedId = 'uncoated' | 'uncoated-bright';
/** Press conditions whose characterisation data are shipped, or whose solids are published. */
export type InkTableId = PressSet | PublishedId;

const tables = new Map<PublishedId, InkTable>();

/** A condition as an ink table: made on first use, then kept. */
export function pressData(id: InkTableId): InkTable {
  if (id !== 'uncoated' && id !== 'uncoated-bright') return measuredPress(id);
  let table = tables.get(id);
  if (!table) tables.set(id, (table = publishedInks(publishedCondition(id), measuredPress('TR006'))));
  return table;
}

/**
 * One SD of a* and b* in greys of coloured inks where the shape between the solids is borrowed: what the same method
 * misses on FOGRA29L (test/print/inks/published.test.ts). Null where such greys were measured.
 */
export const pressDataError = (id: InkTableId): AB | null =>
  id === 'uncoated' || id === 'uncoated-bright' ? { a: 1.3, b: 1.1 } : null;

function publishedCondition(id: PublishedId): PublishedCondition {
  const { solids, increase } = published[id];
  return {
    solids: Object.fromEntries(Object.entries(solids).map(([name, lab]) => [name, xyzOf(lab)])) as Record<
      keyof typeof solids,
      [number, number, number]
    >,
    increase,
  };
}

function xyzOf(lab: ArrayLike<number>): [number, number, number] {
  const xyz = new Float64Array(3);
  labToXyz(lab, xyz);
  return [xyz[0], xyz[1], xyz[2]];
}
