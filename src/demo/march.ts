// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
/** Distance from a point to the nearest surface; never much more than the truth. */
export type Solid = (x: number, y: number, z: number) => number;

/** A camera on the z axis looking at the origin; x to the right, y up, z towards the camera. */
export interface Camera {
  distance: number;
  /** Half the picture's height over the distance to the subject's plane. */
  field: number;
  /** Where the middle of the picture looks. */
  aimX: number;
  aimY: number;
}

/** What a ray through every pixel of a (smaller) frame has met; `depth` is Infinity where it met nothing. */
export interface Frame {
  width: number;
  height: number;
  depth: Float32Array;
  /** Distance along the ray at which it came nearest to the solid, for soft outlines: nearest / pixel size. */
  brush: Float32Array;
}

export interface Ray {
  x: number;
  y: number;
  z: number;
}

/** Unit direction of the ray through a point of the picture (x, y as in `expose`, y down). */
export function rayOf(camera: Camera, x: number, y: number, out: Ray): void {
  const dx = camera.aimX + x * camera.field * camera.distance;
  const dy = camera.aimY - y * camera.field * camera.distance;
  const length = Math.sqrt(dx * dx + dy * dy + camera.distance * camera.distance);
  out.x = dx / length;
  out.y = dy / length;
  out.z = -camera.distance / length;
}

/**
 * Sphere tracing, first for blocks of pixels as if each were a cone, then for each pixel from where its cone touched.
 * `near` and `far` bound the search along the ray.
 */
export function trace(
  solid: Solid,
  camera: Camera,
  width: number,
  height: number,
  near: number,
  far: number,
): Frame {
  const block = 8;
  const pixel = (2 * camera.field) / height;
  const depth = new Float32Array(width * height).fill(Infinity);
  const brush = new Float32Array(width * height).fill(Infinity);
  const ray: Ray = { x: 0, y: 0, z: 0 };
  const z0 = camera.distance;
  for (let top = 0; top < height; top += block)
    for (let left = 0; left < width; left += block) {
      const spread = pixel * block * 0.75;
      rayOf(camera, (2 * (left + block / 2) - width) / height, (2 * (top + block / 2)) / height - 1, ray);
      let start = near;
      let met = true;
      for (let step = 0; step < 60; step++) {
        const d = solid(ray.x * start, ray.y * start, z0 + ray.z * start);
        if (d < spread * start) break;
        start += (d - spread * start) * 0.85 + 1e-3;
        if (start < far) continue;
        met = false;
        break;
      }
      if (!met) continue;
      const bottom = Math.min(height, top + block);
      const right = Math.min(width, left + block);
      for (let row = top; row < bottom; row++)
        for (let column = left; column < right; column++) {
          rayOf(camera, (2 * column + 1 - width) / height, (2 * row + 1) / height - 1, ray);
          const i = row * width + column;
          let t = start - spread * start;
          let nearest = Infinity;
          for (let step = 0; step < 40 && t < far; step++) {
            const d = solid(ray.x * t, ray.y * t, z0 + ray.z * t);
            if (d < nearest) nearest = d;
            if (d < pixel * t * 0.4) {
              depth[i] = t;
              break;
            }
            t += d * 0.85;
          }
          brush[i] = nearest / (pixel * z0);
        }
    }
  return { width, height, depth, brush };
}

/** Share of a distant soft lamp that a point sees: 0 in shadow, 1 in the open. */
export function lampSeen(
  solid: Solid,
  x: number,
  y: number,
  z: number,
  lamp: Ray,
  softness: number,
  reach: number,
): number {
  let seen = 1;
  for (let t = 0.03, step = 0; t < reach && step < 24; step++) {
    const d = solid(x + lamp.x * t, y + lamp.y * t, z + lamp.z * t);
    const share = 0.5 + d / (softness * t);
    if (share < seen) seen = share;
    if (seen <= 0) return 0;
    t += Math.max(0.035, Math.min(0.3, d));
  }
  return seen * seen * (3 - 2 * seen);
}

/** How open a point lies to its surroundings: 0 in a deep hollow, 1 on open ground. */
export function openTo(solid: Solid, x: number, y: number, z: number, normal: Ray): number {
  let hidden = 0;
  let weight = 1;
  for (const away of [0.04, 0.11, 0.24, 0.46]) {
    hidden +=
      (weight * Math.max(0, away - solid(x + normal.x * away, y + normal.y * away, z + normal.z * away))) /
      away;
    weight *= 0.75;
  }
  return Math.max(0, 1 - hidden / 2.2);
}
