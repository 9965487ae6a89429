// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
// The same picture on every machine: no Math.random, one fixed table, scenes differ by where they look at it.

/** Uniform pseudo-random numbers in [0, 1) from a seed (a 32-bit mixing generator). */
export function random(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const SIZE = 1024;
const MASK = SIZE - 1;
const table = new Uint16Array(2 * SIZE);
const gradX = new Float32Array(SIZE);
const gradY = new Float32Array(SIZE);
const gradZ = new Float32Array(SIZE);
{
  const next = random(1907);
  for (let i = 0; i < SIZE; i++) table[i] = i;
  for (let i = SIZE - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    const held = table[i];
    table[i] = table[j];
    table[j] = held;
  }
  table.copyWithin(SIZE, 0, SIZE);
  for (let i = 0; i < SIZE; i++) {
    // directions spread evenly over the sphere
    const z = 2 * next() - 1;
    const angle = 2 * Math.PI * next();
    const r = Math.sqrt(1 - z * z);
    gradX[i] = r * Math.cos(angle);
    gradY[i] = r * Math.sin(angle);
    gradZ[i] = z;
  }
}

const fade = (t: number) => t * t * t * (t * (t * 6 - 15) + 10);

/** Gradient noise in the plane, about -1 to 1, one feature per unit. */
export function noise2(x: number, y: number): number {
  const xi = Math.floor(x);
  const yi = Math.floor(y);
  const fx = x - xi;
  const fy = y - yi;
  const x0 = xi & MASK;
  const x1 = (xi + 1) & MASK;
  const y0 = yi & MASK;
  const y1 = (yi + 1) & MASK;
  const a = table[table[x0] + y0];
  const b = table[table[x1] + y0];
  const c = table[table[x0] + y1];
  const d = table[table[x1] + y1];
  const u = fade(fx);
  const na = gradX[a] * fx + gradY[a] * fy;
  const nb = gradX[b] * (fx - 1) + gradY[b] * fy;
  const nc = gradX[c] * fx + gradY[c] * (fy - 1);
  const nd = gradX[d] * (fx - 1) + gradY[d] * (fy - 1);
  const top = na + (nb - na) * u;
  return (top + (nc + (nd - nc) * u - top) * fade(fy)) * 1.6;
}

/** Gradient noise in space, about -1 to 1. */
export function noise3(x: number, y: number, z: number): number {
  const xi = Math.floor(x);
  const yi = Math.floor(y);
  const zi = Math.floor(z);
  const fx = x - xi;
  const fy = y - yi;
  const fz = z - zi;
  const z0 = zi & MASK;
  const z1 = (zi + 1) & MASK;
  const r0 = table[xi & MASK];
  const r1 = table[(xi + 1) & MASK];
  const y0 = yi & MASK;
  const y1 = (yi + 1) & MASK;
  const r00 = table[r0 + y0];
  const r10 = table[r1 + y0];
  const r01 = table[r0 + y1];
  const r11 = table[r1 + y1];
  const u = fade(fx);
  const v = fade(fy);
  const a = corner(table[r00 + z0], fx, fy, fz);
  const b = corner(table[r10 + z0], fx - 1, fy, fz);
  const c = corner(table[r01 + z0], fx, fy - 1, fz);
  const d = corner(table[r11 + z0], fx - 1, fy - 1, fz);
  const e = corner(table[r00 + z1], fx, fy, fz - 1);
  const f = corner(table[r10 + z1], fx - 1, fy, fz - 1);
  const g = corner(table[r01 + z1], fx, fy - 1, fz - 1);
  const h = corner(table[r11 + z1], fx - 1, fy - 1, fz - 1);
  const ab = a + (b - a) * u;
  const near = ab + (c + (d - c) * u - ab) * v;
  const ef = e + (f - e) * u;
  const far = ef + (g + (h - g) * u - ef) * v;
  return (near + (far - near) * fade(fz)) * 1.5;
}

function corner(i: number, x: number, y: number, z: number): number {
  return gradX[i] * x + gradY[i] * y + gradZ[i] * z;
}

/** Noise upon finer noise: each octave twice as fine and half as strong. About -1 to 1. */
export function fbm2(x: number, y: number, octaves: number): number {
  let sum = 0;
  let strength = 0.5;
  for (let i = 0; i < octaves; i++) {
    sum += strength * noise2(x, y);
    // turned a little each time, or the grid shows
    const t = 1.6 * x - 1.2 * y + 17.3;
    y = 1.2 * x + 1.6 * y + 9.1;
    x = t;
    strength *= 0.5;
  }
  return sum;
}

export function fbm3(x: number, y: number, z: number, octaves: number): number {
  let sum = 0;
  let strength = 0.5;
  for (let i = 0; i < octaves; i++) {
    sum += strength * noise3(x, y, z);
    x = 2.03 * x + 17.3;
    y = 2.03 * y + 9.1;
    z = 2.03 * z + 31.7;
    strength *= 0.5;
  }
  return sum;
}

/** Sharp crests between rounded valleys: 0 to about 1. */
export function ridges2(x: number, y: number, octaves: number): number {
  let sum = 0;
  let strength = 0.5;
  for (let i = 0; i < octaves; i++) {
    const crest = 1 - Math.abs(noise2(x, y));
    sum += strength * crest * crest;
    const t = 1.6 * x - 1.2 * y + 5.2;
    y = 1.2 * x + 1.6 * y + 1.3;
    x = t;
    strength *= 0.5;
  }
  return sum;
}

/** Scatter in [0, 1) of a cell of a grid; `which` picks independent values. */
export function cellRandom(x: number, y: number, which: number): number {
  const i = table[table[x & MASK] + (y & MASK)];
  return table[i + (which & MASK)] / SIZE;
}
