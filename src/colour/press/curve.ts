/**
 * Monotone piecewise cubic through points (Fritsch and Carlson 1980): keeps rising data rising, never overshoots.
 * `x` strictly rising. Beyond the ends the end values hold.
 */
export function monotoneCurve(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const n = x.length;
  const slope = new Float64Array(n);
  const secant = (i: number) => (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
  for (let i = 0; i < n; i++) {
    if (i === 0 || i === n - 1) {
      slope[i] = n > 1 ? secant(Math.min(i, n - 2)) : 0;
      continue;
    }
    const before = secant(i - 1);
    const after = secant(i);
    if (before * after <= 0) continue;
    const w1 = 2 * (x[i + 1] - x[i]) + (x[i] - x[i - 1]);
    const w2 = x[i + 1] - x[i] + 2 * (x[i] - x[i - 1]);
    slope[i] = (w1 + w2) / (w1 / before + w2 / after);
  }
  return at => {
    if (at <= x[0]) return y[0];
    if (at >= x[n - 1]) return y[n - 1];
    let i = 0;
    while (x[i + 1] < at) i++;
    const h = x[i + 1] - x[i];
    const t = (at - x[i]) / h;
    const u = 1 - t;
    return (
      u * u * (1 + 2 * t) * y[i] +
      t * t * (3 - 2 * t) * y[i + 1] +
      h * t * u * (u * slope[i] - t * slope[i + 1])
    );
  };
}
