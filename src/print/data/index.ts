import { column, parseCgats } from '../cgats';
import { characterisedInks, type Patch } from '../inks/characterised';
import { type PublishedCondition, publishedInks } from '../inks/published';
import type { InkTable } from '../inks/table';
import { labToXyz } from '../todo';
import TR003 from './TR003.ti3';
import TR005 from './TR005.ti3';
import TR006 from './TR006.ti3';
import published from './uncoated.json';

/** Press conditions whose characterisation data are shipped (NOTICE.md), or whose solids are published. */
export type InkTableId = 'TR003' | 'TR005' | 'TR006' | 'uncoated' | 'uncoated-bright';

const texts = { TR003, TR005, TR006 };
const tables = new Map<InkTableId, InkTable>();

/** A condition as an ink table: made on first use, then kept. */
export function pressData(id: InkTableId): InkTable {
  let table = tables.get(id);
  if (!table) {
    table =
      id === 'uncoated' || id === 'uncoated-bright'
        ? publishedInks(publishedCondition(id), pressData('TR006'))
        : characterisedInks(patchesOf(texts[id]));
    tables.set(id, table);
  }
  return table;
}

function publishedCondition(id: 'uncoated' | 'uncoated-bright'): PublishedCondition {
  const { solids, increase } = published[id];
  return {
    solids: Object.fromEntries(Object.entries(solids).map(([name, lab]) => [name, xyzOf(lab)])) as Record<
      keyof typeof solids,
      [number, number, number]
    >,
    increase,
  };
}

/**
 * Patches of a CGATS text: CMYK in percent; CIELAB, which in the dark has more digits than XYZ, else XYZ.
 * Throws `CgatsError` where a field is missing.
 */
export function patchesOf(text: string): Patch[] {
  const cgats = parseCgats(text);
  const inLab = cgats.fields.includes('LAB_L');
  const [c, m, y, k] = ['CMYK_C', 'CMYK_M', 'CMYK_Y', 'CMYK_K'].map(field => column(cgats, field));
  const values = (inLab ? ['LAB_L', 'LAB_A', 'LAB_B'] : ['XYZ_X', 'XYZ_Y', 'XYZ_Z']).map(field =>
    column(cgats, field),
  );
  return cgats.rows.map((_, i) => {
    const value: [number, number, number] = [values[0][i], values[1][i], values[2][i]];
    return { inks: [c[i], m[i], y[i], k[i]], xyz: inLab ? xyzOf(value) : value };
  });
}

function xyzOf(lab: ArrayLike<number>): [number, number, number] {
  const xyz = new Float64Array(3);
  labToXyz(lab, xyz);
  return [xyz[0], xyz[1], xyz[2]];
}

/** The shipped text itself, for checks against patches that the interpolation does not use. */
export const pressDataText = (id: keyof typeof texts): string => texts[id];
