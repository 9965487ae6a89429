// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { fbm2, noise2 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';

export const film: Film = { contrast: 1.45, stops: 0.3, vignette: 0.3, grain: 0.011 };

const HORIZON = -0.16;

/** Stones left standing, from far to near: `fog` is the share of air before it, `foot` how far below the horizon it stands. */
const stones = [
  { x: -1.12, half: 0.035, tall: 0.16, fog: 0.9, foot: 0.004 },
  { x: -0.42, half: 0.05, tall: 0.2, fog: 0.88, foot: 0.006 },
  { x: 0.62, half: 0.055, tall: 0.3, fog: 0.8, foot: 0.012 },
  { x: 1.05, half: 0.09, tall: 0.21, fog: 0.72, foot: 0.016 },
  { x: -0.12, half: 0.07, tall: 0.4, fog: 0.55, foot: 0.03 },
  { x: 0.3, half: 0.11, tall: 0.5, fog: 0.34, foot: 0.07 },
  { x: -0.78, half: 0.15, tall: 0.72, fog: 0.06, foot: 0.17 },
];

/** A flooded quarry, one morning of fog: far stones hardly darker than the air. */
export function fog(width: number, height: number): Plate {
  const pixel = 2 / height;
  return expose(width, height, (x, y) => {
    const depth = y - HORIZON;
    if (depth <= 0) {
      let light = air(x, y);
      for (const stone of stones) light = standing(stone, x, HORIZON + stone.foot - y, light, pixel);
      return light;
    }
    // the mirror shivers more the nearer it is
    const ripple = waves(x, depth);
    const bend = ripple * (0.004 + 0.03 * depth);
    let light = air(x, HORIZON - depth * 0.92) * mix(0.96, 0.6, smoothstep(0, 1.15, depth));
    light *= 1 + 0.16 * ripple * smoothstep(0, 0.35, depth);
    light = mix(air(x, y), light, smoothstep(0, 0.05, depth));
    for (const stone of stones) {
      const up = stone.foot - depth;
      if (up > 0) light = standing(stone, x, up, light, pixel);
      else
        light = mix(
          light,
          standing(stone, x + bend * 0.5, bend * 1.4 - up, light, pixel + 0.003 + 0.014 * depth),
          0.8,
        );
    }
    return light;
  });
}

function air(x: number, y: number): number {
  const glow = 0.24 * Math.exp(-((x - 0.25) ** 2) * 1.2 - (y + 0.5) ** 2 * 2);
  return 0.38 + glow + 0.06 * fbm2(x * 0.9, y * 2.2, 4) - 0.1 * smoothstep(-0.4, -1.1, y);
}

function waves(x: number, depth: number): number {
  const far = 1 / (depth + 0.05);
  const dx = x - 0.5;
  const dy = (depth - 0.55) * 3.2;
  const away = Math.sqrt(dx * dx + dy * dy);
  const ring = Math.sin(away * 62) * Math.exp(-away * 3) * smoothstep(0, 0.08, away);
  return noise2(x * far * 1.6 + 3, far * 9) * 0.5 + noise2(x * far * 4, far * 23) * 0.3 + 0.6 * ring;
}

/** The light at (x, `up` above the stone's foot) with this stone before what is `behind`. */
function standing(
  stone: (typeof stones)[number],
  x: number,
  up: number,
  behind: number,
  soft: number,
): number {
  const { half, tall, x: own } = stone;
  if (up > tall * 1.2 || Math.abs(x - own) > half * 1.5) return behind;
  const share = up / tall;
  const middle = own + 0.12 * up * noise2(own * 9, 1) + 0.1 * half * noise2(share * 3, own * 5);
  const across = (x - middle) / half;
  const side = across > 0 ? 3 : -3;
  const wide =
    1 -
    0.3 * share * share +
    0.12 * noise2(share * 4 + own * 7, side) +
    0.05 * noise2(share * 17, side + own);
  const slant =
    tall *
    (1 +
      0.12 * across * Math.sign(noise2(own * 5, 3)) -
      0.16 * across * across +
      0.05 * noise2(across * 4, own * 8));
  const edge = soft + 0.006 * stone.fog;
  const cover =
    smoothstep(-edge, edge, half * wide - Math.abs(x - middle)) * smoothstep(edge, -edge, up - slant);
  if (cover === 0) return behind;
  const skin = 1 + 0.9 * fbm2(x * 13 + own * 31, up * 9, 5) + 0.5 * noise2(across * 2 + own * 9, up * 3.5);
  const wet = 1 - 0.55 * smoothstep(0.16, 0.02, share + 0.04 * noise2(x * 9, own));
  const lit = (0.022 + 0.12 * smoothstep(-0.6, 1, across)) * Math.max(0.15, skin) * wet;
  const before = stone.fog + 0.5 * stone.fog * (1 - stone.fog) * smoothstep(0.3, 0, share);
  return mix(behind, mix(lit, 0.43, before), cover);
}
