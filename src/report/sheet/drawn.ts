import { converter } from 'culori';
import type { Forecast } from '../../shared/forecast';
import { screenColour } from './colour';
import type { Draw } from './draws';
import { toneScale } from './tones';

/** Channel values (sRGB, 0-1) at which a drawing is worked out; between them a screen goes straight. */
const INPUTS = Array.from({ length: 18 }, (_, i) => i / 17);

const toLab = converter('lab');

/** What becomes of the red, green and blue of a neutral pixel, at evenly spaced values from black to white; all 0-1. */
export type Drawing = [red: number[], green: number[], blue: number[]];

/**
 * A picture as a screen shows one possible order of it, for eyes that are used to the paper: lightness and tint by the
 * picture's own forecast. The same `draw` for all pictures of a book shows how they stand beside each other.
 */
export function drawingOf(forecast: Forecast, draw: Draw): Drawing {
  const print = toneScale(forecast);
  const colours = INPUTS.map(value => {
    // the conversion misses white by a hair, and nothing is lighter than paper
    const file = Math.min(100, toLab({ mode: 'rgb', r: value, g: value, b: value }).l);
    const { L, a, b } = print(file, draw);
    return channels(screenColour(L, a, b));
  });
  return [0, 1, 2].map(channel => colours.map(colour => colour[channel])) as Drawing;
}

/** `#rrggbb` as three numbers 0-1. */
const channels = (colour: string) => [1, 3, 5].map(at => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
