// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { type Camera, lampSeen, openTo, type Ray, rayOf, trace } from '../march';
import { fbm2, fbm3, noise3 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';
import { ball, carve, ellipsoid, join, rod } from '../solids';

export const film: Film = { contrast: 1.35, stops: 0.15, vignette: 0.35, grain: 0.012 };

const CAMERA: Camera = { distance: 6.2, field: 0.262, aimX: 0, aimY: -0.1 };
const LAMP = unit(0.83, 0.6, 0.4);
const RIM = unit(-0.9, 0.3, -0.35);
const SKY = unit(0, 1, 0.25);
/** The head is turned and bowed a little. */
const COS_YAW = Math.cos(0.44);
const SIN_YAW = Math.sin(0.44);
const COS_BOW = Math.cos(0.13);
const SIN_BOW = Math.sin(0.13);

/** A stone head from the quarry's unfinished row, eyes closed, one window beside it. */
export function head(width: number, height: number): Plate {
  const w = Math.ceil(width / 2);
  const h = Math.ceil(height / 2);
  const frame = trace(stone, CAMERA, w, h, 4.2, 8);
  const shape = shadeFrame(frame.depth, w, h);
  const ray: Ray = { x: 0, y: 0, z: 0 };
  return expose(width, height, (x, y) => {
    const behind = room(x, y);
    // where this pixel lies in the half-size frame
    const u = Math.min(w - 1.001, Math.max(0, (x * height) / 4 + w / 2 - 0.5));
    const v = Math.min(h - 1.001, Math.max(0, ((y + 1) * h) / 2 - 0.5));
    const i = Math.floor(v) * w + Math.floor(u);
    const cover = sample(shape.cover, i, w, u, v);
    if (cover < 0.002) return behind;
    const t = sample(shape.depth, i, w, u, v) / cover;
    rayOf(CAMERA, x, y, ray);
    const px = ray.x * t;
    const py = ray.y * t;
    const pz = CAMERA.distance + ray.z * t;
    const direct = sample(shape.direct, i, w, u, v) / cover;
    const open = sample(shape.open, i, w, u, v) / cover;
    const rim = sample(shape.rim, i, w, u, v) / cover;
    const above = sample(shape.above, i, w, u, v) / cover;
    // the grain of the stone: how much higher it is a little towards the lamp
    const here = surface(px, py, pz);
    const there = surface(px + LAMP.x * 0.006, py + LAMP.y * 0.006, pz + LAMP.z * 0.006);
    const bump = Math.max(-0.6, Math.min(0.6, (here - there) * 0.5));
    const stain = fbm3(px * 1.7 + 5, py * 0.8, pz * 1.7, 4);
    const streak = smoothstep(0.1, 0.5, fbm3(px * 7, py * 0.8 + 3, pz * 7, 3)) * smoothstep(-0.2, 0.6, above);
    const albedo =
      0.6 * (1 + 0.5 * stain) * (1 - 0.35 * streak) * (1 + 0.1 * noise3(px * 55, py * 55, pz * 55));
    const lit =
      0.95 * direct * (1 + bump) +
      0.055 * open * (1 + 0.4 * above + 0.4 * bump) +
      0.16 * rim * open * (1 - bump) +
      0.006;
    return mix(behind, albedo * lit, cover);
  });
}

/** A dark workshop out of focus: a plastered wall, the edge of a doorway. */
function room(x: number, y: number): number {
  const door = smoothstep(-0.15, -0.5, x) * smoothstep(1.5, 0.2, y);
  return (
    0.012 +
    0.028 * door +
    0.03 * smoothstep(0.2, 1.1, x) * (0.6 + 0.4 * fbm2(x * 2, y * 2, 3)) +
    0.01 * fbm2(x * 1.2 + 4, y, 3)
  );
}

/** Height of the fine grain, in units of its own. */
function surface(x: number, y: number, z: number): number {
  return (
    fbm3(x * 19, y * 19, z * 19, 4) * 0.75 + 0.5 * Math.min(0, noise3(x * 42 + 7, y * 42, z * 42) + 0.35)
  );
}

interface Shade {
  cover: Float32Array;
  depth: Float32Array;
  direct: Float32Array;
  open: Float32Array;
  rim: Float32Array;
  above: Float32Array;
}

/** Light on every pixel of the small frame; zero where there is no stone, so that edges can be averaged. */
function shadeFrame(depth: Float32Array, w: number, h: number): Shade {
  const plane = () => new Float32Array(w * h);
  const shade: Shade = {
    cover: plane(),
    depth: plane(),
    direct: plane(),
    open: plane(),
    rim: plane(),
    above: plane(),
  };
  const ray: Ray = { x: 0, y: 0, z: 0 };
  const n: Ray = { x: 0, y: 0, z: 0 };
  for (let row = 0, i = 0; row < h; row++)
    for (let column = 0; column < w; column++, i++) {
      const t = depth[i];
      if (t === Infinity) continue;
      rayOf(CAMERA, (2 * column + 1 - w) / h, (2 * row + 1) / h - 1, ray);
      const x = ray.x * t;
      const y = ray.y * t;
      const z = CAMERA.distance + ray.z * t;
      slopeAt(x, y, z, n);
      const facing = n.x * LAMP.x + n.y * LAMP.y + n.z * LAMP.z;
      shade.cover[i] = 1;
      shade.depth[i] = t;
      if (facing > 0)
        shade.direct[i] =
          facing * lampSeen(carved, x + n.x * 0.01, y + n.y * 0.01, z + n.z * 0.01, LAMP, 0.25, 1.6);
      shade.open[i] = openTo(carved, x, y, z, n);
      shade.rim[i] = Math.max(0, n.x * RIM.x + n.y * RIM.y + n.z * RIM.z);
      shade.above[i] = n.x * SKY.x + n.y * SKY.y + n.z * SKY.z;
    }
  return shade;
}

function slopeAt(x: number, y: number, z: number, out: Ray): void {
  const e = 0.004;
  const a = stone(x + e, y - e, z - e);
  const b = stone(x - e, y - e, z + e);
  const c = stone(x - e, y + e, z - e);
  const d = stone(x + e, y + e, z + e);
  const nx = a - b - c + d;
  const ny = -a - b + c + d;
  const nz = -a + b - c + d;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
  out.x = nx / length;
  out.y = ny / length;
  out.z = nz / length;
}

/** Deepest that weathering goes. */
const WORN = 0.045;

function stone(wx: number, wy: number, wz: number): number {
  const d = carved(wx, wy, wz);
  return d > 2 * WORN ? d - WORN : d + worn(wx, wy, wz);
}

/** The head as the mason left it. */
function carved(wx: number, wy: number, wz: number): number {
  // into the head's own axes
  const x = wx * COS_YAW - wz * SIN_YAW;
  const z1 = wx * SIN_YAW + wz * COS_YAW;
  const y = wy * COS_BOW + z1 * SIN_BOW;
  const z = z1 * COS_BOW - wy * SIN_BOW;
  const far = ellipsoid(x, y + 0.4, z, 1.2, 2.0, 1.3);
  if (far > 0.4) return far - 0.12;
  return join(body(x, y, z), face(Math.abs(x), y, z, x), 0.14);
}

/** Lost edges, pits, a crack from the brow over the cheek. */
function worn(x: number, y: number, z: number): number {
  const lost = 0.014 * fbm3(x * 3.1, y * 3.1, z * 3.1 + 4, 3) + 0.004 * noise3(x * 15, y * 15, z * 15);
  const line =
    x * 0.9 + y * 0.5 - 0.34 + 0.12 * noise3(x * 2.3, y * 2.3, z * 2.3) + 0.03 * noise3(x * 10, y * 10, 2);
  return (
    lost + 0.03 * Math.exp(-((line / 0.011) ** 2)) * smoothstep(-0.75, -0.3, y) * smoothstep(0.9, 0.5, y)
  );
}

/** Half a face: `x` is the distance from its middle plane, `side` says which half. */
function face(x: number, y: number, z: number, side: number): number {
  let d = ellipsoid(x, y - 0.28, z + 0.1, 0.79, 0.93, 0.95);
  d = join(d, ellipsoid(x, y + 0.2, z - 0.2, 0.58, 0.84, 0.66), 0.2);
  d = join(d, ellipsoid(x, y + 0.83, z - 0.5, 0.19, 0.17, 0.24), 0.32);
  d = join(d, ellipsoid(x - 0.37, y + 0.1, z - 0.56, 0.19, 0.15, 0.17), 0.22);
  d -= hair(x, y, z, side);
  if (z < 0.3 || d > 0.4) return d;
  // brow, then the hollow of the eye under it
  d = join(d, rod(x, y, z, [0.09, 0.17, 0.87], [0.5, 0.19, 0.6], 0.045, 0.04), 0.16);
  d = carve(d, ellipsoid(x - 0.29, y - 0.01, z - 0.93, 0.21, 0.12, 0.2), 0.14);
  // closed lids: a bowed lid over the ball, and the line where they meet
  d = join(d, ellipsoid(x - 0.3, y + 0.01, z - 0.64, 0.16, 0.105, 0.135), 0.04);
  const fromEye = x - 0.3;
  const lid = y + 0.06 - 0.8 * fromEye * fromEye;
  d += 0.02 * Math.exp(-((lid / 0.013) ** 2)) * smoothstep(0.175, 0.11, Math.abs(fromEye));
  d -= 0.012 * Math.exp(-(((lid - 0.022) / 0.02) ** 2)) * smoothstep(0.185, 0.1, Math.abs(fromEye));
  // nose
  d = join(d, rod(x, y, z, [0, 0.18, 0.86], [0, -0.2, 1.03], 0.055, 0.072), 0.11);
  d = join(d, ball(x, y + 0.235, z - 1.04, 0.083), 0.07);
  d = join(d, ellipsoid(x - 0.095, y + 0.27, z - 0.94, 0.058, 0.055, 0.09), 0.06);
  d = carve(d, ellipsoid(x - 0.055, y + 0.325, z - 0.985, 0.025, 0.022, 0.045), 0.035);
  // mouth: the furrow under the nose, two lips, the line between them, the hollow above the chin
  d = carve(d, rod(x, y, z, [0, -0.34, 1.0], [0, -0.43, 0.985], 0.018, 0.028), 0.07);
  d = join(d, ellipsoid(x - 0.07, y + 0.475, z - 0.85, 0.115, 0.042, 0.075), 0.07);
  d = join(d, ellipsoid(x, y + 0.565, z - 0.845, 0.145, 0.055, 0.08), 0.07);
  const mouth = y + 0.515 + 0.5 * x * x - 0.012 * Math.exp(-x * x * 900);
  d += 0.026 * Math.exp(-((mouth / 0.012) ** 2)) * smoothstep(0.235, 0.12, x);
  return carve(d, ellipsoid(x, y + 0.675, z - 0.93, 0.13, 0.035, 0.08), 0.12);
}

/** How far the hair stands off: combed back in waves from a parting, cut with a chisel. */
function hair(x: number, y: number, z: number, side: number): number {
  const line = y - 0.66 + 0.62 * x * x + 1.15 * Math.max(0, 0.34 - z);
  const thick = smoothstep(-0.03, 0.1, line) * smoothstep(-0.75, -0.45, y);
  if (thick === 0) return 0;
  const strand =
    Math.atan2(x, y - 0.3 + 0.5 * z) * 15 +
    1.5 * Math.sin(z * 5 + 2.5 * x + y * 2) +
    noise3(side * 2, y * 2, z * 2);
  return thick * (0.075 + 0.022 * Math.sin(strand) + 0.009 * Math.sin(strand * 2.6 + 1));
}

/** Neck, and shoulders left as the block they came from. */
function body(x: number, y: number, z: number): number {
  const neck = rod(x, y, z, [0, -0.6, -0.12], [0, -1.5, -0.22], 0.4, 0.45);
  const block = ellipsoid(x, y + 2.02, z + 0.1, 1.25, 0.62, 0.75);
  return join(neck, block, 0.35);
}

function sample(plane: Float32Array, i: number, w: number, u: number, v: number): number {
  const fu = u - Math.floor(u);
  const fv = v - Math.floor(v);
  const top = plane[i] + (plane[i + 1] - plane[i]) * fu;
  return top + (plane[i + w] + (plane[i + w + 1] - plane[i + w]) * fu - top) * fv;
}

function unit(x: number, y: number, z: number): Ray {
  const length = Math.hypot(x, y, z);
  return { x: x / length, y: y / length, z: z / length };
}
