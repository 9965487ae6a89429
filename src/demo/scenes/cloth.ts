// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { fbm2, noise2 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';
import { light } from '../relief';

export const film: Film = { contrast: 1.3, stops: 0, vignette: 0.35, grain: 0.01 };

/** Linen thrown over a line, lit low from the left: long folds that break where the cloth lies double. */
export function cloth(width: number, height: number): Plate {
  const heights = expose(width, height, folds);
  const { direct, open } = light(heights, { towards: [-0.8, -0.42, 0.8], softness: 0.5, reach: 0.5 }, 0.11);
  let i = 0;
  return expose(width, height, (x, y) => {
    const h = heights.light[i];
    const weave =
      0.045 * Math.sin((x + h) * 900) * Math.sin((y + h * 0.3) * 900) + 0.03 * noise2(x * 130, y * 420);
    const worn = 0.06 * fbm2(x * 1.7 + 3, y * 1.7, 4);
    const value = 0.012 + 0.1 * open[i] + 0.62 * direct[i] * mix(0.55, 1.05, open[i]);
    i++;
    return value * (0.95 + weave + worn);
  });
}

function folds(x: number, y: number): number {
  // folds fall from the upper right, swing out and gather again
  const bend = 0.55 * noise2(x * 0.55 + 1, y * 0.42 + 3) + 0.16 * noise2(x * 1.4, y * 1.1 + 7);
  const across = x * 1.15 + y * 0.36 + bend;
  const along = y * 0.8 - x * 0.25 + 0.3 * bend;
  const deep = pleat(across * 2.3 + 0.35 * noise2(along * 0.7, across), along) * 0.17;
  const middle = pleat(across * 5.1 + 0.9 * noise2(along * 1.1 + 4, across * 0.8), along + 5) * 0.062;
  const fine = noise2(across * 11 + 2 * noise2(along * 2, across * 3), along * 1.3) * 0.012;
  // and it has lain folded in a chest: faint creases across
  const crossed = noise2(along * 2.1 + 0.8 * across, across * 0.7 + 4);
  const crease =
    -0.012 * Math.exp(-((crossed / 0.07) ** 2)) * smoothstep(0.1, -0.4, noise2(x * 1.1 + 9, y * 1.1));
  const rumple = 0.016 * fbm2(across * 3.1 + 2, along * 2.6, 3) + 0.0016 * fbm2(x * 15, y * 15, 3);
  return deep + middle + fine + crease + rumple;
}

/** Round backs and soft valleys, each fold of another strength. */
function pleat(t: number, along: number): number {
  const n = Math.floor(t);
  const f = t - n;
  const lean = f + 0.09 * Math.sin(2 * Math.PI * f);
  const wave = 0.5 - 0.5 * Math.cos(2 * Math.PI * lean);
  const here = 0.65 + 0.6 * noise2(n * 3.7 + 0.5, along * 0.6);
  return wave ** 0.8 * here;
}
