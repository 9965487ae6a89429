import { differenceCiede2000, modeLab65, useMode } from 'culori/fn';

type Lab = ArrayLike<number>;

useMode(modeLab65);
const ciede2000 = differenceCiede2000();

/**
 * CIEDE2000 (ISO/CIE 11664-6). The library turns everything into its D65 kind of CIELAB first; the numbers are given as
 * that kind, so that they are taken as they stand: the formula itself knows no white. For reports, not for pixels.
 */
export const dE00 = (one: Lab, other: Lab): number => ciede2000(lab65(one), lab65(other));

const lab65 = (lab: Lab) => ({ mode: 'lab65' as const, l: lab[0], a: lab[1], b: lab[2] });

/** CIE 1976 colour difference. */
export const dE76 = (one: Lab, other: Lab): number =>
  Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);

/** Distance in the a*b* plane, lightness left out: what ISO 12647-7 judges greys by. */
export const dCh = (one: Lab, other: Lab): number => Math.hypot(one[1] - other[1], one[2] - other[2]);
