/** Every limit that judging a picture rests on, each with its reason. Distances in CIELAB, shares 0-1. */
export const THRESHOLDS = {
  /** RGB: largest difference between channels that is no colour, in steps of 1/255. Any conversion may round by 1. */
  neutralSpread: 1,
  /** Lab pictures: largest |a*|, |b*| that is no colour: one step of an 8-bit file. */
  neutralLab: 1,
  /** Inks: largest value of an ink that is absent. A codec leaves as much where there was none. */
  absentInk: 0.01,

  /** Share of the pixels that a point of the tone line rests on: a few marks on a lightness of their own are no tone. */
  toneSupport: 0.01,
  /** Share of the pixels with colour at their lightness below which that is a mark, not the picture's tone. */
  toneShare: 0.1,
  /** Tone-line chroma from which a picture is toned: twice a conversion's rounding, seen beside a neutral one. */
  toned: 1,

  /** Distance from the tone line from which a block strays: about what is seen within one picture. */
  stray: 2,
  /** A toned picture's blocks stray no farther than this: codecs at quality 60 with 4:2:0 reach 3.8 along hard edges... */
  tonedMost: 4,
  /** ...and on no larger a share (they reach 1.1 %). */
  tonedShare: 0.02,

  /** `colour`: strong colour (a bird, a logo) on this share of the picture. Casts and stains stay below this distance. */
  strong: 12,
  strongShare: 0.01,
  /** `colour`: clear colour on this share. A vivid photograph left with a tenth of its saturation stays below. */
  clear: 6,
  clearShare: 0.1,
  /** `colour`: one hue all over (mist, water, wood) that still is no tone: mean C*, and the share that strays. */
  monochrome: 8,
  monochromeShare: 0.05,

  /** Mean a*, b* from which a hue is worth naming. */
  hue: 0.5,
} as const;
