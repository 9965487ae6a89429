// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
/** Light in the scene, row by row, linear: 0 = none, 1 = what the film is exposed for as white. */
export interface Plate {
  width: number;
  height: number;
  light: Float32Array;
}

/**
 * Exposes a plate: `at` is asked once for every pixel. x runs from -w/h to w/h and y from -1 (top) to 1, so that a
 * scene is the same at every size.
 */
export function expose(width: number, height: number, at: (x: number, y: number) => number): Plate {
  const light = new Float32Array(width * height);
  const unit = 2 / height;
  for (let row = 0, i = 0; row < height; row++) {
    const y = (row + 0.5) * unit - 1;
    for (let column = 0; column < width; column++, i++) light[i] = at((column + 0.5 - width / 2) * unit, y);
  }
  return { width, height, light };
}

/** A blurred copy: three box blurs, close to a Gaussian of standard deviation `sigma` pixels. */
export function blur(plate: Plate, sigma: number): Plate {
  const { width, height } = plate;
  const radius = Math.max(1, Math.round((Math.sqrt(4 * sigma * sigma + 1) - 1) / 2));
  const from: Float32Array = Float32Array.from(plate.light);
  let to: Float32Array = new Float32Array(from.length);
  for (let pass = 0; pass < 3; pass++) {
    for (let row = 0; row < height; row++) boxLine(from, to, row * width, 1, width, radius);
    for (let column = 0; column < width; column++) boxLine(to, from, column, width, height, radius);
  }
  to = from;
  return { width, height, light: to };
}

function boxLine(
  from: Float32Array,
  to: Float32Array,
  start: number,
  step: number,
  count: number,
  radius: number,
): void {
  const span = 2 * radius + 1;
  const last = count - 1;
  let sum = 0;
  for (let i = -radius; i <= radius; i++) sum += from[start + clampIndex(i, last) * step];
  for (let i = 0; i < count; i++) {
    to[start + i * step] = sum / span;
    sum +=
      from[start + clampIndex(i + radius + 1, last) * step] -
      from[start + clampIndex(i - radius, last) * step];
  }
}

const clampIndex = (i: number, last: number) => (i < 0 ? 0 : Math.min(i, last));

/** 0 below `from`, 1 above `to`, smooth between. `from` may be the larger one. */
export function smoothstep(from: number, to: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - from) / (to - from)));
  return t * t * (3 - 2 * t);
}

export const mix = (a: number, b: number, t: number) => a + (b - a) * t;
