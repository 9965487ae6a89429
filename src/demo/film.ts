// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import { random } from './noise';
import { blur, type Plate } from './plate';

export interface Film {
  /** Stops more (or fewer) than the scene was lit for. */
  stops?: number;
  /** Slope of the film's curve in the mid-tones; 1 is soft, 1.6 hard. */
  contrast?: number;
  /** Standard deviation of the grain in the mid-tones, share of the whole scale. */
  grain?: number;
  /** How much darker the corners are, 0-1. */
  vignette?: number;
  /** Share of the light that the lens spreads around highlights, and how far (share of the height). */
  glow?: { share: number; reach: number };
  /** Tone of the deepest black and of paper white, 0-1. */
  black?: number;
  white?: number;
  seed?: number;
}

/**
 * Develops a plate: the light becomes tones 0-1, in the numbers a picture file keeps (sRGB's curve: 0.46 is mid
 * grey). A film's S-curve over stops, with grain strongest in the mid-tones.
 */
export function develop(plate: Plate, film: Film = {}): Float32Array {
  const { stops = 0, contrast = 1.25, vignette = 0.25, grain = 0.013 } = film;
  const { black = 0.015, white = 0.985, seed = 1 } = film;
  const { width, height } = plate;
  const light = film.glow ? glowing(plate, film.glow) : plate.light;
  const gain = 2 ** stops / 0.18;
  const tones = new Float32Array(light.length);
  const specks = grainOf(width, height, seed);
  for (let row = 0, i = 0; row < height; row++) {
    const y = (2 * row) / height - 1;
    for (let column = 0; column < width; column++, i++) {
      const x = ((2 * column) / width - 1) * 0.9;
      const r2 = x * x + y * y;
      const fall = 1 - vignette * Math.min(1, r2 * r2 * 0.32 + r2 * 0.12);
      // logistic in stops: mid grey in gives mid grey out
      const over = Math.max(1e-6, light[i] * gain * fall) ** -(contrast * 1.02);
      let tone = 1 / (1 + over * 1.17);
      tone += specks[i] * grain * (0.25 + 3 * tone * (1 - tone));
      tones[i] = black + (white - black) * Math.min(1, Math.max(0, tone));
    }
  }
  return tones;
}

function glowing(plate: Plate, glow: { share: number; reach: number }): Float32Array {
  const spread = blur(plate, glow.reach * plate.height).light;
  return plate.light.map((value, i) => value + glow.share * spread[i]);
}

/** Clumps about a pixel and a half wide, mean 0, standard deviation about 1. */
function grainOf(width: number, height: number, seed: number): Float32Array {
  const next = random(seed);
  const raw = new Float32Array((width + 1) * (height + 1));
  // the sum of three uniforms is near enough to a normal
  for (let i = 0; i < raw.length; i++) raw[i] = (next() + next() + next() - 1.5) * 2;
  const grain = new Float32Array(width * height);
  for (let row = 0, i = 0; row < height; row++) {
    const top = row * (width + 1);
    const bottom = top + width + 1;
    for (let column = 0; column < width; column++, i++)
      grain[i] =
        0.82 * raw[top + column] +
        0.42 * (raw[top + column + 1] + raw[bottom + column]) +
        0.2 * raw[bottom + column + 1];
  }
  return grain;
}
