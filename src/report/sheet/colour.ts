import { clampRgb, converter, formatHex } from 'culori';

const toRgb = converter('rgb');

/**
 * How a screen shows a colour that is seen under D50: sRGB as `#rrggbb`, adapted to the screen's D65 white by the
 * linear Bradford transform (culori's `lab`), channels out of range cut.
 */
export const screenColour = (L: number, a: number, b: number): string =>
  formatHex(clampRgb(toRgb({ mode: 'lab', l: L, a, b })));
