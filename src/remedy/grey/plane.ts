// no-unit-test: a type and its units; index.test.ts uses them
/**
 * A picture as lightness: `lightness[index[i]]` is the L* of pixel i (0-100, CIELAB D50, relative to white or paper).
 * Where the picture is R = G = B, one channel or black ink alone, `index` is the stored values themselves, so that
 * nothing is rounded; else it is L* in steps of 100/65535.
 */
export interface TonePlane {
  width: number;
  height: number;
  index: Uint8Array | Uint16Array;
  /** 256 or 65536 entries, as `index` can hold. */
  lightness: Float32Array;
  /** Opacity of every pixel, full is the most that the array holds; null where all are opaque. */
  alpha: Uint8Array | Uint16Array | null;
  /** Tint by entry of `lightness`: a*, b* interleaved; null: neutral. */
  tint: Float32Array | null;
  /** Colour that stays, by pixel: a*, b* interleaved, x 256; null: none does. */
  colour: Int16Array | null;
}

/** Entries of the linear table of a plane that was weighed together from several channels. */
export const STEPS = 65536;
const LAST = STEPS - 1;

/** Steps of the linear table by L*. */
export const PER_L = LAST / 100;

/** L* of every step of the linear table. */
export function linearLightness(): Float32Array {
  const lightness = new Float32Array(STEPS);
  for (let i = 0; i < STEPS; i++) lightness[i] = i / PER_L;
  return lightness;
}

/** The plane with other lightness, entry by entry. */
export const relit = (plane: TonePlane, change: (L: number) => number): TonePlane => ({
  ...plane,
  lightness: plane.lightness.map(change),
});
