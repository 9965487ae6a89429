// no-unit-test: numbers only; test/picture/photographs.test.ts tries them on photographs
/** Every limit that judging a picture rests on, each with its reason. Distances in CIELAB, shares 0-1. */
export const THRESHOLDS = {
  /** C* of the whole picture up to which it has none: what profiles' rounded numbers leave on their grey axes. */
  rounding: 0.05,
  /** RGB: largest difference between channels that is no colour, in steps of 1/255. Any conversion may round by 1. */
  neutralSpread: 1,
  /** Lab pictures: largest |a*|, |b*| that is no colour: one step of an 8-bit file. */
  neutralLab: 1,
  /** Inks: largest value of an ink that is absent. A codec leaves as much where there was none. */
  absentInk: 0.01,

  /** Share of the pixels that a point of the tone line rests on: enough for a median, few enough for sparse lights. */
  toneSupport: 0.002,
  /**
   * Mean distance of the line's points from their neighbours' middle beyond which it is no tone: toned photographs reach
   * 3.0, a few flat colours begin at 8.
   */
  roughTone: 5,
  /** Share of the pixels with colour at their lightness below which that is a mark, not the picture's tone. */
  toneShare: 0.1,
  /** Tone-line chroma from which a picture is toned: twice a conversion's rounding, seen beside a neutral one. */
  toned: 1,

  /**
   * Mean distance of the pixels from the tone line from which noise moves the line itself: at 3 (chroma noise of 6/255,
   * uniform) by up to 1, at 5 (SD 6) by 2 to 6 where few pixels are.
   */
  noisy: 1.5,
  /**
   * Share of that distance which blocks keep at most where it is noise: fine noise an eighth, that of 3 pixels 0.3; a
   * codec's halved chroma keeps 0.44 and more.
   */
  noiseKept: 0.35,
  /**
   * Standard error wanted of a point of a noisy picture's line. Blocks' own: 1.25 for a median, twice that because
   * neighbours share a codec's colour samples.
   */
  toneError: 0.25,
  medianError: 2.5,

  /** Distance from the tone line from which a block strays: about what is seen within one picture. */
  stray: 2,
  /** Times the noise of the blocks (standard deviation of a*, b*) that is no colour: chance exceeds it on 4 in a million. */
  strayNoise: 5,
  /** Noise excuses no more than this. */
  strayMost: 4,
  /**
   * A toned picture's blocks stray no farther than `stray` and this share of its mean C*, at most `tonedSlackMost`: a
   * codec's coarse steps.
   */
  tonedSlack: 0.3,
  tonedSlackMost: 1.5,
  /**
   * Along hard edges a codec (quality 60, 4:2:0) smears the tone itself: there blocks may stray by these shares of mean
   * C* and of the tone line's largest C* beyond `stray`, and no farther than `smearMost`.
   */
  smear: { ofMean: 0.5, ofTone: 0.2 },
  smearMost: 8.5,
  /** RGB: range of G (0-255) within a block from which it holds an edge. */
  edge: 32,
  /**
   * Share of the picture that strays away from edges up to which that is a codec's doing: this for each unit of the tone
   * line's largest C* (quality 60 reaches 0.9 of it), and no more than `smoothMost` (a night in mist has 1.9 %).
   */
  smoothOfTone: 0.001,
  smoothMost: 0.01,

  /** `colour`: strong colour (a bird, a logo) on this share of the picture. Casts and stains do not reach that far. */
  strong: 12,
  strongShare: 0.005,
  /** `colour`: clear colour on this share. Vivid photographs left with a tenth of their saturation reach 3.3 %. */
  clear: 6,
  clearShare: 0.04,
  /**
   * `colour`: pixels this far from the tone line on average, even where blocks average to it: no scan or codec leaves so
   * much (chroma noise of 6/255 leaves about 4); confetti, a woven pattern, a screen of coloured dots do.
   */
  colourNoise: 15,
  /** `colour`: mean C* that no toning reaches: the strongest sepia measured has 69, a leaf against the light 76. */
  vivid: 72,
  /** `colour`: one hue all over (mist, water, leaves), of this mean C*, that is no tone and strays on this share. */
  oneHue: 8,
  oneHueShare: 0.003,

  /** Mean a*, b* from which a hue is worth naming. */
  hue: 0.5,
} as const;
