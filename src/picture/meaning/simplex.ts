/** Shares of a cell in whole numbers, so that a share and its channel sort as one. */
const UNIT = 1 << 20;

/** One kind of value (such as L*) on the nodes of a grid over up to four channels. */
export interface Nodes {
  values: Float32Array;
  side: number;
  /** From one node to the next, by channel. */
  strides: readonly number[];
  /** Place among the nodes (0 to side - 1) by stored value 0-1. */
  place(stored: number): number;
}

/**
 * Interpolates that value for every pixel of a raster within the simplex of its cell (Kasson, Nin, Plouffe and Hafner
 * 1995: tetrahedra, here of four dimensions): `out[i]` is the value x `unit`, rounded and held within what `out` takes.
 * @param data whole numbers that fill their array
 * @param step samples a pixel, the channels first
 */
export function interpolated(
  { values, side, strides, place }: Nodes,
  data: Uint8Array | Uint16Array,
  step: number,
  unit: number,
  out: Uint16Array,
): void {
  const levels = data instanceof Uint8Array ? 256 : 65536;
  // a channel that is not there stands at its first node
  const tables = [0, 1, 2, 3].map(c => ({
    first: new Int32Array(levels),
    share: new Int32Array(levels).fill(c),
    stride: strides[c] ?? 0,
  }));
  strides.forEach((stride, c) => {
    for (let i = 0; i < levels; i++) {
      const position = place(i / (levels - 1));
      const cell = Math.min(side - 2, Math.floor(position));
      tables[c].first[i] = cell * stride;
      tables[c].share[i] = (Math.round((position - cell) * UNIT) << 2) | c;
    }
  });
  const [{ first: first0, share: share0 }, { first: first1, share: share1 }] = tables;
  const { first: first2, share: share2 } = tables[2];
  const { first: first3, share: share3 } = tables[3];
  const along = Int32Array.from(tables, ({ stride }) => stride);
  const four = strides.length === 4;
  const scale = unit / UNIT;
  for (let i = 0, at = 0; i < out.length; i++, at += step) {
    const v0 = data[at];
    const v1 = data[at + 1];
    const v2 = data[at + 2];
    const v3 = four ? data[at + 3] : 0;
    const node = first0[v0] + first1[v1] + first2[v2] + first3[v3];
    const s0 = share0[v0];
    const s1 = share1[v1];
    const s2 = share2[v2];
    const s3 = share3[v3];
    // the largest share first: the simplex is walked along that channel first
    const upper = Math.max(s0, s1);
    const lower = Math.min(s0, s1);
    const upper2 = Math.max(s2, s3);
    const lower2 = Math.min(s2, s3);
    const a = Math.max(upper, upper2);
    const d = Math.min(lower, lower2);
    const middle = Math.min(upper, upper2);
    const middle2 = Math.max(lower, lower2);
    const b = Math.max(middle, middle2);
    const c = Math.min(middle, middle2);
    const nodeA = node + along[a & 3];
    const nodeB = nodeA + along[b & 3];
    const nodeC = nodeB + along[c & 3];
    const wa = a >> 2;
    const wb = b >> 2;
    const wc = c >> 2;
    const wd = d >> 2;
    const sum =
      (UNIT - wa) * values[node] +
      (wa - wb) * values[nodeA] +
      (wb - wc) * values[nodeB] +
      (wc - wd) * values[nodeC] +
      wd * values[nodeC + along[d & 3]];
    const value = sum * scale + 0.5;
    out[i] = Math.max(0, Math.min(value, 65535));
  }
}
