import { column, parseCgats } from '../cgats';
import { labToXyz } from '../lab';
import type { Patch } from './characterised';

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
  const xyz = new Float64Array(3);
  return cgats.rows.map((_, i) => {
    for (let j = 0; j < 3; j++) xyz[j] = values[j][i];
    if (inLab) labToXyz(xyz, xyz);
    return { inks: [c[i], m[i], y[i], k[i]], xyz: [xyz[0], xyz[1], xyz[2]] };
  });
}
