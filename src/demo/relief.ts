// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import { blur, type Plate } from './plate';

export interface Lamp {
  /** Direction towards the light: x to the right, y down, z out of the picture. Need not be a unit vector. */
  towards: [number, number, number];
  /** How soft its shadows are: tangent of the lamp's half angle. */
  softness: number;
  /** How far a shadow may fall, in half picture heights. */
  reach: number;
}

export interface Relief {
  /** Cosine between surface and light, 0-1, times the share of the lamp that is seen from there. */
  direct: Float32Array;
  /** Openness to the sky, 0 in a deep hollow to 1 on a crest; 0.5 on a plain. */
  open: Float32Array;
}

/** Lights a relief whose heights are given in half picture heights, seen from straight in front. */
export function light(heights: Plate, lamp: Lamp, hollow: number): Relief {
  const { width, height } = heights;
  const h = heights.light;
  const [lx, ly, lz] = lamp.towards;
  const length = Math.hypot(lx, ly, lz);
  const slope = height / 4; // central difference over two pixels of 2 / height each
  const direct = new Float32Array(h.length);
  for (let row = 0, i = 0; row < height; row++) {
    const up = row > 0 ? width : 0;
    const down = row < height - 1 ? width : 0;
    for (let column = 0; column < width; column++, i++) {
      const nx = (h[i - (column > 0 ? 1 : 0)] - h[i + (column < width - 1 ? 1 : 0)]) * slope;
      const ny = (h[i - up] - h[i + down]) * slope;
      const facing = (nx * lx + ny * ly + lz) / (length * Math.sqrt(nx * nx + ny * ny + 1));
      direct[i] = Math.max(facing, 0);
    }
  }
  castShadows(heights, lamp, direct);
  return { direct, open: openness(heights, hollow) };
}

/** Walks from every pixel towards the lamp, in longer and longer steps, and keeps the share of the lamp still seen. */
function castShadows(heights: Plate, lamp: Lamp, direct: Float32Array): void {
  const { width, height, light: h } = heights;
  const [lx, ly, lz] = lamp.towards;
  const flat = Math.hypot(lx, ly);
  const rise = lz / flat;
  const pixel = 2 / height;
  const steps: { dx: number; dy: number; away: number }[] = [];
  for (let away = 2.5 * pixel; away < lamp.reach; away *= 1.22)
    steps.push({
      dx: Math.round((lx / flat) * (away / pixel)),
      dy: Math.round((ly / flat) * (away / pixel)),
      away,
    });
  for (let row = 0, i = 0; row < height; row++)
    for (let column = 0; column < width; column++, i++) {
      if (direct[i] === 0) continue;
      let seen = 1;
      for (const { dx, dy, away } of steps) {
        const x = column + dx;
        const y = row + dy;
        if (x < 0 || y < 0 || x >= width || y >= height) break;
        const margin = ((h[i] - h[y * width + x]) / away + rise) / lamp.softness + 0.5;
        if (margin < seen) seen = margin;
        if (seen <= 0) break;
      }
      direct[i] *= Math.max(seen, 0);
    }
}

function openness(heights: Plate, hollow: number): Float32Array {
  const wide = blur(heights, 0.03 * heights.height).light;
  const near = blur(heights, 0.008 * heights.height).light;
  return heights.light.map((value, i) => {
    const open = 0.5 + ((value - wide[i]) * 0.6 + (value - near[i])) / hollow;
    return open < 0 ? 0 : Math.min(open, 1);
  });
}
