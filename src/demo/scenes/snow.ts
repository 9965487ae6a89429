// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { cellRandom, fbm2, noise2 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';

export const film: Film = { contrast: 1.5, stops: 0.5, vignette: 0.15, grain: 0.008 };

const HORIZON = -0.42;
const SUN = { x: 0.82, y: -0.33, z: 0.3 };

/** Wind-blown snow under a low sun, and the posts of a buried fence going over the rise. */
export function snow(width: number, height: number): Plate {
  const pixel = 2 / height;
  return expose(width, height, (x, y) => {
    const rise = HORIZON + 0.09 * noise2(x * 0.8 + 2, 0.3) - 0.05 * x;
    const air = 0.34 + 0.16 * smoothstep(-1, rise, y) + 0.03 * fbm2(x * 1.2, y * 2.5, 4);
    let light = air;
    if (y > rise - pixel) light = mix(air, ground(x, y - rise), smoothstep(rise - pixel, rise + pixel, y));
    return posts(x, y, rise, light, pixel);
  });
}

function ground(x: number, depth: number): number {
  const far = 1 / (depth + 0.12);
  const u = x * far;
  const v = far * 2.4;
  const e = 0.012;
  const h = drift(u, v);
  const nx = (h - drift(u + e, v)) / e;
  const nz = (h - drift(u, v + e)) / e;
  const length = Math.sqrt(nx * nx + nz * nz + 1);
  const facing = (nx * SUN.x + nz * -SUN.z + 0.42) / length;
  const shadow = smoothstep(0.02, 0.11, drift(u + 0.22, v - 0.06) - h - 0.045);
  const sparkle = noise2(u * 210, v * 130) > 0.86 ? 0.25 * Math.min(1, depth * 2.2) : 0;
  const direct = Math.max(0, facing) * (1 - 0.8 * shadow);
  const lit =
    0.14 + 0.68 * direct + 0.02 * noise2(u * 60, v * 34) * Math.min(1, depth * 3) + sparkle * direct;
  return mix(lit, 0.48, Math.exp(-depth * 9) * 0.7);
}

/** Ridges carved by the wind, all leaning one way, on long dunes. */
function drift(u: number, v: number): number {
  const long = 0.34 * noise2(u * 0.32 + 4, v * 0.3 + 1);
  const bend = 0.9 * noise2(u * 0.5, v * 0.4 + 8);
  const t = v * 1.35 + u * 0.5 + bend * 1.6;
  const saw = t - Math.floor(t);
  const ridge = (saw < 0.72 ? saw / 0.72 : (1 - saw) / 0.28) * 0.12;
  const broken = smoothstep(-0.45, 0.35, noise2(u * 0.8 + 20, v * 0.9));
  return long + ridge * broken + 0.02 * fbm2(u * 2.2, v * 5.5 + bend, 4);
}

/** Shadows first, then the posts from the far end to the near one. */
function posts(x: number, y: number, rise: number, light: number, pixel: number): number {
  for (const post of fence) {
    const along = (post.x - x) / 1.9;
    if (along < 0 || along > post.tall * 1.5) continue;
    const at = rise + post.down + along * 0.16 + 0.012 * noise2(x * 5, post.x * 9);
    const edge = smoothstep(post.wide * 0.9 + along * 0.02, 0, Math.abs(y - at));
    light *= 1 - 0.55 * edge * smoothstep(post.tall * 1.5, 0, along);
  }
  for (const post of fence) {
    const up = rise + post.down - y;
    if (up < -post.wide * 0.6 || up > post.tall) continue;
    const middle = post.x + post.lean * up;
    const edge = post.wide * (1 + 0.25 * noise2(up * 14, post.x * 9)) - Math.abs(x - middle);
    if (edge < -pixel) continue;
    const side = smoothstep(-pixel, pixel, edge) * smoothstep(post.tall, post.tall - post.wide * 0.8, up);
    const wood = 0.02 + 0.02 * fbm2(x * 110, y * 9, 3) + 0.075 * smoothstep(0, post.wide, x - middle);
    const capped = up > post.tall - post.wide * 1.3 - 0.2 * Math.abs(x - middle);
    light = mix(light, mix(capped ? 0.8 : wood, 0.4, post.haze), side);
  }
  return light;
}

const fence = Array.from({ length: 11 }, (_, i) => {
  const near = 1 - i / 11.5;
  const size = near * near;
  return {
    x: -0.95 + 1.32 * (1 - size) + 0.06 * Math.sin(i * 2.3),
    /** Below the rise. */
    down: 0.02 + 0.86 * size ** 1.25,
    tall: (0.16 + 0.5 * size) * (0.85 + 0.3 * cellRandom(i, 3, 1)),
    wide: 0.004 + 0.021 * size,
    lean: (cellRandom(i, 7, 2) - 0.5) * 0.22,
    haze: (1 - near) * 0.8,
  };
}).reverse();
