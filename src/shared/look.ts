// no-unit-test: types only
/** A box of a picture as it is seen (EXIF orientation applied), in its full-size pixels. */
export interface SeenBox {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A part of a picture at its full resolution, for showing: sRGB, never for judging. */
export interface Detail {
  /** What is shown: the box that was asked for, as far as it lies in the picture. */
  box: SeenBox;
  png: Uint8Array;
}

/** One pixel as it is stored. */
export interface PixelReading {
  /** Place in the picture as it is seen, from 0. */
  x: number;
  y: number;
  /** Stored channels by name, in native units (Lab and floating point as they are); alpha apart. */
  channels: { name: string; value: number }[];
  /** Native value of white or of full ink; null for Lab and floating point. */
  full: number | null;
  /** 0-1; null without alpha. Lab and chroma are then those on paper white. */
  alpha: number | null;
  /** CIELAB D50 by what the picture is judged by: relative to white, or to bare paper. Null where nothing is seen. */
  lab: { L: number; a: number; b: number; chroma: number } | null;
}

/**
 * What can be marked on a picture, on a grid over it as it is seen, row by row. Worked out from every stored value, not
 * from what a screen shows.
 */
export interface Marks {
  width: number;
  height: number;
  /** Mean L* x 100 of each cell; `TRANSPARENT` where no pixel of it is seen. */
  lightness: Uint16Array;
  /** Bits: see `MARK`. */
  kinds: Uint8Array;
  /** Largest ink total of each cell in percent, rounded up; null without inks. */
  ink: Uint16Array | null;
  shares: {
    /** Shares (0-1) of the area: that strays from the picture's own tone, that is cut off at white. */
    colour: number;
    lights: number;
    /** Of the pixels with an ink total above `i - 1` and up to `i` percent (0-400); null without inks. */
    ink: number[] | null;
  };
}

/** Bits of `Marks.kinds`: left-over colour, lights that are cut off. */
export const MARK = { colour: 1, lights: 2 } as const;

/** In `Marks.lightness`: no pixel is seen there. */
export const TRANSPARENT = 0xffff;
