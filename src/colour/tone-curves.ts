/** How one channel's stored number stands for light. Both ways, 0-1. */
export interface ToneCurve {
  /** Stored value -> linear light. */
  decode(value: number): number;
  /** Linear light -> stored value. */
  encode(light: number): number;
}

/** IEC 61966-2-1. Negative values are mirrored. */
export const srgbCurve: ToneCurve = {
  decode: v => (v < 0 ? -srgbCurve.decode(-v) : v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4),
  encode: y => (y < 0 ? -srgbCurve.encode(-y) : y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055),
};

/** A plain power curve, such as 1.8 or 2.2. Negative values are taken as 0. */
export const gammaCurve = (gamma: number): ToneCurve => ({
  decode: v => Math.max(0, v) ** gamma,
  encode: y => Math.max(0, y) ** (1 / gamma),
});

/** CIE lightness: the stored value is L* / 100 (CIE 015:2018, 8.2.1). */
export const lightnessCurve: ToneCurve = {
  decode: v => (v > 0.08 ? ((v + 0.16) / 1.16) ** 3 : (v * 2700) / 24389),
  encode: y => (y > 216 / 24389 ? 1.16 * Math.cbrt(y) - 0.16 : (y * 24389) / 2700),
};
