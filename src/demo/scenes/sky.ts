// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { fbm2, noise2 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';

const HORIZON = 0.62;
const SUN = { x: -0.55, y: -0.05 };

/** Weather coming in over the sea: a deck of clouds in perspective, the sun behind it, glitter on the water. */
export const film: Film = { contrast: 1.5, stops: 0.1, vignette: 0.3, grain: 0.012 };

export function sky(width: number, height: number): Plate {
  return expose(width, height, (x, y) => (y < HORIZON ? clouds(x, y) : sea(x, y)));
}

function clouds(x: number, y: number): number {
  // where the ray meets the deck
  const up = HORIZON - y + 0.045;
  const far = 0.62 / up;
  const u = x * far * 1.15 + 3.7;
  const v = far * 2.1 + 1.9;
  const density = cover(u, v);
  const dx = x - SUN.x;
  const dy = (y - SUN.y) * 1.25;
  const distance = Math.sqrt(dx * dx + dy * dy);
  const blue = mix(0.035, 0.33, smoothstep(0.9, 0.0, up)) + 0.3 * Math.exp(-distance * 2.6);
  if (density <= 0) return blue;
  // thickness towards the sun: bright rims, dark bellies
  const towards = 0.16 / Math.max(0.25, distance);
  const su = u + (SUN.x - x) * towards;
  const sv = v + (y - SUN.y) * towards * 1.4;
  const shade = Math.max(0, cover(su, sv)) + 0.5 * Math.max(0, cover(2 * su - u, 2 * sv - v));
  const through = Math.exp(-2.6 * shade);
  const forward = 1 + 2.6 * Math.exp(-distance * 2.1);
  const lit = 0.055 + 0.5 * through * forward * Math.exp(-1.5 * density) + 0.06 * smoothstep(0.75, 0, up);
  // far clouds are smaller than a pixel at their edges
  const opacity = 1 - Math.exp(-density * mix(1.6, 5, smoothstep(0.04, 0.4, up)));
  const haze = smoothstep(0.3, 0.03, up);
  return mix(mix(blue, lit, opacity), 0.42 + 0.35 * Math.exp(-Math.abs(dx) * 1.6), haze * 0.75);
}

function cover(u: number, v: number): number {
  const warp = noise2(u * 0.7 + 9, v * 0.5);
  const large = fbm2(u * 0.55 + warp * 0.35, v * 0.42, 3);
  const fine = fbm2(u * 1.9 + warp, v * 1.5 - warp * 0.6, 6);
  return large * 1.5 + fine * 0.85 + 0.12;
}

function sea(x: number, y: number): number {
  const depth = y - HORIZON;
  const far = 1 / (depth + 0.006);
  const u = x * far;
  const swell = fbm2(u * 0.55, far * 1.5, 4);
  const ripple =
    noise2(u * 2.6 + 5, far * 6.5) + 0.7 * noise2(u * 6.1, far * 17 + 3) + 0.5 * noise2(u * 15, far * 43);
  const slope = swell * 0.9 + ripple * 0.42 * Math.min(1, depth * 8);
  const glitterWidth = 0.16 + depth * 0.9;
  const column = Math.exp(-(((x - SUN.x) / glitterWidth) ** 2));
  const glitter = column * smoothstep(0.15, 0.85, slope + column * 0.26) * 1.3;
  const body = 0.07 + 0.12 * Math.exp(-depth * 5) + 0.05 * slope;
  return Math.max(0.012, body) + glitter + 0.16 * Math.exp(-depth * 26);
}
