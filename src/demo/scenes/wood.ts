// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { fbm2, noise2, random } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';

export const film: Film = {
  contrast: 1.45,
  stops: 0.3,
  vignette: 0.4,
  grain: 0.014,
  glow: { share: 0.06, reach: 0.02 },
};

interface Trunk {
  x: number;
  lean: number;
  half: number;
  /** Where in the noise its bark and its bends come from. */
  own: number;
}

/** One distance: its trunks and the ground they stand on. */
interface Layer {
  near: number;
  size: number;
  mist: number;
  trunks: Trunk[];
}

const layers = plant(9);

/** Inside the windbreak wood: trunks behind trunks in mist, the sun coming through, a floor in deep shadow. */
export function wood(width: number, height: number): Plate {
  const pixel = 2 / height;
  return expose(width, height, (x, y) => {
    const glow = Math.exp(-(((x - 0.35) / 0.75) ** 2) - ((y + 0.35) / 0.8) ** 2);
    // from the nearest backwards: what is behind something opaque need not be drawn
    let seen = 1;
    let light = 0;
    for (let i = layers.length - 1; i >= 0 && seen > 0.01; i--) {
      const layer = layers[i];
      const air = (0.13 + 0.6 * glow) * layer.mist;
      const floor = 0.34 + 0.34 * layer.near + 0.05 * noise2(x * (2.4 / layer.size) + i * 7, i);
      const ground = standing(x, y - floor, layer, pixel);
      if (ground > 0) {
        light += seen * ground * (earth(x, y, layer, glow) + air * 0.6);
        seen *= 1 - ground;
      }
      for (const trunk of layer.trunks) {
        const cover = covered(trunk, x, y, layer, pixel);
        if (cover === 0) continue;
        light += seen * cover * (bark(trunk, x, y, layer, glow) * (0.25 + 0.75 * layer.near) + air);
        seen *= 1 - cover;
      }
    }
    if (seen > 0.01) {
      const leaves = fbm2(x * 4 + 2, y * 4, 5) * smoothstep(0.2, -0.9, y);
      light += seen * (0.15 + 0.72 * glow) * (1 + 0.5 * leaves) * smoothstep(1.05, 0.2, y - 0.2);
    }
    return light + shafts(x, y) * (0.5 + 0.5 * glow);
  });
}

function plant(count: number): Layer[] {
  const next = random(77);
  return Array.from({ length: count }, (_, i) => {
    const near = (i + 1) / count;
    const size = 0.18 + near ** 2.2;
    const spacing = 0.17 + 0.62 * near ** 1.6;
    const trunks: Trunk[] = [];
    for (let x = -2 + spacing * next(); x < 2; x += spacing * (0.35 + 1.3 * next()))
      if (next() < 0.78)
        trunks.push({
          x,
          lean: (next() - 0.5) * 0.16,
          half: size * (0.04 + 0.05 * next()),
          own: 100 * next(),
        });
    return { near, size, mist: (1 - near) ** 1.15, trunks };
  });
}

const middleOf = (trunk: Trunk, y: number, size: number) =>
  trunk.x + trunk.lean * (0.8 - y) + 0.025 * size * noise2(y * 1.7 + trunk.own, size * 3.1);

const halfOf = (trunk: Trunk, y: number, near: number) =>
  trunk.half * (1 + 0.12 * (y + 0.2) + 0.5 * smoothstep(0.55, 1.15, y - 0.25 + near * 0.15));

function covered(trunk: Trunk, x: number, y: number, layer: Layer, pixel: number): number {
  const off = Math.abs(x - trunk.x - trunk.lean * (0.8 - y));
  if (off > trunk.half * 2 + 0.03 * layer.size) return 0;
  const half = halfOf(trunk, y, layer.near);
  const across = Math.abs(x - middleOf(trunk, y, layer.size)) / half;
  const rough = 0.04 * noise2(trunk.own, (y * 14) / layer.size);
  return smoothstep(1 + pixel / half, 1 - pixel / half, across + rough);
}

function bark(trunk: Trunk, x: number, y: number, layer: Layer, glow: number): number {
  const middle = middleOf(trunk, y, layer.size);
  const across = (x - middle) / halfOf(trunk, y, layer.near);
  // furrows run up the trunk and crowd towards its sides
  const round = Math.sqrt(Math.max(0, 1 - across * across));
  const around = Math.asin(Math.max(-1, Math.min(1, across)));
  const furrow =
    fbm2(around * 2.2 + trunk.own, y * (3.2 / layer.size), 5) +
    0.5 * noise2(around * 7 + trunk.own, (y * 9) / layer.size);
  const towards = middle < 0.35 ? 1 : -1;
  const rim = smoothstep(0.35, 1, across * towards) * (0.16 + 0.5 * glow) * smoothstep(0.9, -0.2, y);
  return (0.012 + 0.05 * round * (0.4 + glow) + 0.5 * rim) * Math.max(0.12, 0.7 + 0.9 * furrow);
}

/** Ragged growth standing up from the ground's edge: share covered at `above` (negative = above the ground). */
function standing(x: number, above: number, layer: Layer, pixel: number): number {
  if (above > pixel) return 1;
  const { size } = layer;
  if (above < -0.08 * size) return 0;
  const blades =
    Math.abs(noise2((x * 26) / size + 9 * size, size)) * (0.4 + 0.6 * noise2((x * 5) / size, size + 4));
  const tip = 0.012 * size + 0.075 * size * Math.max(0, blades);
  return smoothstep(-tip - pixel, -tip * 0.7, above);
}

function earth(x: number, y: number, layer: Layer, glow: number): number {
  const leaf = Math.max(0, fbm2((x * 7) / layer.size + 9 * layer.near, (y * 16) / layer.size, 5) + 0.16);
  return (0.008 + 0.05 * glow * layer.mist + 0.07 * leaf * (0.3 + glow)) * (1.25 - layer.near * 0.5);
}

/** Beams from the upper right, broken by branches. */
function shafts(x: number, y: number): number {
  const angle = Math.atan2(x - 0.75, y + 2.1);
  const beam = smoothstep(0.05, 0.6, noise2(angle * 16 + 3, 0.7) + 0.4 * noise2(angle * 47, 0.2));
  return mix(0, 0.085, beam) * smoothstep(0.95, -0.3, y) * smoothstep(-1.7, 0.3, x);
}
