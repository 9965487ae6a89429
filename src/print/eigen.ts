/**
 * Eigenvalues and eigenvectors of a small symmetric matrix (n x n, row by row) by Jacobi rotations. Column i of
 * `vectors` belongs to `values[i]`.
 */
export function eigenSymmetric(
  matrix: readonly number[],
  n: number,
): { values: number[]; vectors: Float64Array } {
  const m = Float64Array.from(matrix);
  const vectors = new Float64Array(n * n);
  for (let i = 0; i < n; i++) vectors[i * n + i] = 1;
  for (let sweep = 0; sweep < 30; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off += m[p * n + q] ** 2;
    if (off < 1e-24) break;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(m, vectors, n, p, q);
  }
  return { values: Array.from({ length: n }, (_, i) => m[i * n + i]), vectors };
}

function rotate(m: Float64Array, vectors: Float64Array, n: number, p: number, q: number) {
  if (m[p * n + q] === 0) return;
  const angle = 0.5 * Math.atan2(2 * m[p * n + q], m[p * n + p] - m[q * n + q]);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  for (let i = 0; i < n; i++) {
    const ip = m[i * n + p];
    const iq = m[i * n + q];
    m[i * n + p] = c * ip + s * iq;
    m[i * n + q] = c * iq - s * ip;
  }
  for (let i = 0; i < n; i++) {
    const pi = m[p * n + i];
    const qi = m[q * n + i];
    m[p * n + i] = c * pi + s * qi;
    m[q * n + i] = c * qi - s * pi;
    const vp = vectors[i * n + p];
    const vq = vectors[i * n + q];
    vectors[i * n + p] = c * vp + s * vq;
    vectors[i * n + q] = c * vq - s * vp;
  }
}
