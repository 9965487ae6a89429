// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { cellRandom, fbm2, noise2 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';

export const film: Film = {
  contrast: 1.2,
  stops: 0.3,
  vignette: 0.5,
  grain: 0.017,
  glow: { share: 0.075, reach: 0.06 },
};

const WINDOW = { x: 0.22, y: -0.12, half: 0.3, tall: 0.42 };

/** The watch-house at night: one lit window in a rough wall, snow on the sill, more of it falling. */
export function window(width: number, height: number): Plate {
  return expose(width, height, (x, y) => {
    const px = x - WINDOW.x;
    const py = y - WINDOW.y;
    const inX = WINDOW.half - Math.abs(px);
    const inY = WINDOW.tall - Math.abs(py);
    const inside = Math.min(inX, inY);
    let light = inside > 0 ? pane(px, py, inside) : wall(x, y, px, py, inside);
    light = sill(px, py, light);
    return light + flakes(x, y);
  });
}

function pane(px: number, py: number, inside: number): number {
  const bar = Math.min(
    Math.abs(px) - 0.011,
    Math.abs(py + 0.13) - 0.009,
    Math.abs(py - 0.15) - 0.009,
    inside - 0.022,
  );
  if (bar < 0) return 0.012 + 0.12 * smoothstep(-0.012, 0, bar) ** 2;
  // a lamp behind a drawn curtain, old glass that bends it
  const bend = 0.02 * noise2(px * 9 + 3 * Math.sign(px), py * 5);
  const lx = px + 0.07 + bend;
  const ly = py + 0.1 + bend;
  const lamp = 1.5 * Math.exp(-(lx * lx * 26 + ly * ly * 20)) + 0.42 * Math.exp(-(lx * lx * 4 + ly * ly * 3));
  const curtain =
    0.72 + 0.2 * Math.sin((px + bend) * 62 + 2.4 * noise2(px * 6, py * 1.3)) + 0.12 * noise2(px * 22, py * 3);
  const parted = smoothstep(0.02, 0.05, Math.abs(px + 0.07 - 0.05 * py) - 0.035);
  const frost = smoothstep(0.09, 0.0, bar + 0.05 * noise2(px * 26, py * 26)) * 0.22;
  const jug =
    Math.hypot((px - 0.16) * 1.25, py - 0.33) < 0.085 || (Math.abs(px - 0.16) < 0.03 && py > 0.2 && py < 0.3);
  const shade = jug ? 0.16 : 1;
  return (0.05 + lamp * mix(1.25, curtain, parted)) * shade + frost * (0.35 + 0.3 * noise2(px * 90, py * 90));
}

function wall(x: number, y: number, px: number, py: number, inside: number): number {
  const row = Math.floor(y * 6.3 + 0.25 * noise2(x * 2, y * 2));
  const shift = 0.5 * (row & 1) + cellRandom(row, 4, 4) * 0.4;
  const column = Math.floor(x * 3.4 + shift);
  const fx = x * 3.4 + shift - column;
  const fy = y * 6.3 + 0.25 * noise2(x * 2, y * 2) - row;
  const joint = Math.min(Math.min(fx, 1 - fx) * 1.9, Math.min(fy, 1 - fy)) + 0.035 * noise2(x * 24, y * 24);
  const stone = 0.6 + 0.5 * cellRandom(column, row, 6) + 0.55 * fbm2(x * 11, y * 11, 5);
  const face = stone * mix(0.25, 1, smoothstep(0.02, 0.12, joint));
  // the moon is behind the house; what is seen is lit by the snow and by the window's own spill
  const reveal = smoothstep(-0.06, 0, inside) * 0.16 * (0.6 + 0.4 * smoothstep(-0.4, 0.4, py));
  const spill = 0.2 * Math.exp(-Math.hypot(px, py * 0.85) * 2.1);
  const below = smoothstep(0.35, 1.05, y) * 0.05;
  return Math.max(0.0004, face) * (0.01 + spill + below) + reveal * (0.5 + 0.3 * fbm2(x * 20, y * 20, 3));
}

function sill(px: number, py: number, light: number): number {
  const top =
    WINDOW.tall - 0.02 + 0.018 * noise2(px * 7, 1) - 0.03 * smoothstep(WINDOW.half, 0, Math.abs(px)) * 0.6;
  const out = WINDOW.half + 0.07 - Math.abs(px);
  const depth = py - top;
  if (out < 0 || depth < 0 || depth > 0.15) return light;
  if (depth < 0.055) {
    const facing = smoothstep(0.055, 0, depth);
    return (0.05 + 0.6 * facing * Math.exp(-Math.abs(px) * 3.2)) * (0.9 + 0.14 * noise2(px * 60, py * 60));
  }
  return (
    0.006 +
    0.05 *
      smoothstep(0.15, 0.06, depth) *
      (0.5 + 0.6 * fbm2(px * 15, py * 15, 4)) *
      Math.exp(-Math.abs(px) * 3)
  );
}

/** Falling snow, near flakes large and soft, lit only near the window. */
function flakes(x: number, y: number): number {
  let sum = 0;
  for (let layer = 0; layer < 3; layer++) {
    const scale = 7 + 9 * layer;
    const u = (x + 0.13 * y) * scale + layer * 31.7;
    const v = y * scale * 0.8 + layer * 11.3;
    const cx = Math.floor(u);
    const cy = Math.floor(v);
    if (cellRandom(cx, cy, 60 + layer) > 0.42) continue;
    const dx = u - cx - 0.25 - 0.5 * cellRandom(cx, cy, 70 + layer);
    const dy = (v - cy - 0.25 - 0.5 * cellRandom(cx, cy, 80 + layer)) * 0.72;
    const size = 0.05 + 0.06 * cellRandom(cx, cy, 90);
    const shape = smoothstep(size, size * 0.3, Math.sqrt(dx * dx + dy * dy));
    sum += shape * (0.1 - 0.02 * layer);
  }
  const lit = 0.05 + 1.35 * Math.exp(-Math.hypot(x - WINDOW.x, y - WINDOW.y) * 1.9);
  return sum * lit;
}
