// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
// Distances to simple solids, and ways to join them softly. Negative inside. Distances are near enough, not exact.

export function ellipsoid(x: number, y: number, z: number, rx: number, ry: number, rz: number): number {
  const ux = x / rx;
  const uy = y / ry;
  const uz = z / rz;
  const k0 = Math.sqrt(ux * ux + uy * uy + uz * uz);
  if (k0 < 1e-6) return -Math.min(rx, ry, rz);
  const vx = ux / rx;
  const vy = uy / ry;
  const vz = uz / rz;
  return (k0 * (k0 - 1)) / Math.sqrt(vx * vx + vy * vy + vz * vz);
}

export function ball(x: number, y: number, z: number, r: number): number {
  return Math.sqrt(x * x + y * y + z * z) - r;
}

/** A rod from a to b whose radius goes from `ra` to `rb`. */
export function rod(
  x: number,
  y: number,
  z: number,
  a: readonly [number, number, number],
  b: readonly [number, number, number],
  ra: number,
  rb: number,
): number {
  const bx = b[0] - a[0];
  const by = b[1] - a[1];
  const bz = b[2] - a[2];
  const px = x - a[0];
  const py = y - a[1];
  const pz = z - a[2];
  const along = (px * bx + py * by + pz * bz) / (bx * bx + by * by + bz * bz);
  const t = along < 0 ? 0 : Math.min(along, 1);
  const dx = px - bx * t;
  const dy = py - by * t;
  const dz = pz - bz * t;
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - (ra + (rb - ra) * t);
}

/** Both, melted together over a distance of about `k`. */
export function join(a: number, b: number, k: number): number {
  const h = Math.max(0, k - Math.abs(a - b)) / k;
  return Math.min(a, b) - h * h * k * 0.25;
}

/** `a` with `b` taken away, the rim rounded over about `k`. */
export function carve(a: number, b: number, k: number): number {
  const h = Math.max(0, k - Math.abs(a + b)) / k;
  return Math.max(a, -b) + h * h * k * 0.25;
}
