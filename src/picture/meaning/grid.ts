import { interpolated } from './simplex';

/** Table steps per 8-bit step: block means lie between whole values. */
const FINE = 8;

/**
 * Lab on a grid over three or four stored channels, interpolated within simplexes: along the diagonal of equal
 * values only nodes of the diagonal count, so a neutral axis stays neutral between them.
 */
export class LabGrid {
  readonly #nodes: Float32Array;
  readonly #step: Int32Array;
  /** Place among the nodes (0 to side - 1) by stored value. */
  readonly #place: Float32Array;

  /**
   * @param side nodes a channel
   * @param bend exponent of a node's place by stored value (0-1): below 1, nodes are close where values are small
   * @param labOf Lab of many rows of stored values (0-1, `channels` a row) into `out`
   */
  constructor(
    readonly channels: 3 | 4,
    readonly side: number,
    readonly bend: number,
    labOf: (values: Float64Array, out: Float64Array) => void,
  ) {
    const nodes = side ** channels;
    const values = new Float64Array(nodes * channels);
    for (let node = 0; node < nodes; node++)
      for (let c = channels - 1, rest = node; c >= 0; c--) {
        values[node * channels + c] = ((rest % side) / (side - 1)) ** (1 / bend);
        rest = Math.floor(rest / side);
      }
    const lab = new Float64Array(nodes * 3);
    labOf(values, lab);
    this.#nodes = Float32Array.from(lab);
    this.#place = Float32Array.from(
      { length: 255 * FINE + 1 },
      (_, i) => (i / (255 * FINE)) ** bend * (side - 1),
    );
    this.#step = Int32Array.from({ length: channels }, (_, c) => 3 * side ** (channels - 1 - c));
  }

  lab(values: Float32Array, n: number, out: Float32Array): void {
    const { channels, side } = this;
    const nodes = this.#nodes;
    const places = this.#place;
    const share = new Float64Array(channels);
    const order = new Int32Array(channels);
    for (let i = 0; i < n; i++) {
      let at = 0;
      for (let c = 0; c < channels; c++) {
        const position = places[(values[i * channels + c] * FINE + 0.5) | 0];
        const cell = Math.min(side - 2, position | 0);
        const rest = position - cell;
        at += cell * this.#step[c];
        // sorted by falling remainder, as the simplex is walked
        let place = c;
        while (place > 0 && share[place - 1] < rest) {
          share[place] = share[place - 1];
          order[place] = order[place - 1];
          place--;
        }
        share[place] = rest;
        order[place] = this.#step[c];
      }
      const first = 1 - share[0];
      let L = first * nodes[at];
      let a = first * nodes[at + 1];
      let b = first * nodes[at + 2];
      for (let c = 0; c < channels; c++) {
        at += order[c];
        const weight = share[c] - (c + 1 < channels ? share[c + 1] : 0);
        L += weight * nodes[at];
        a += weight * nodes[at + 1];
        b += weight * nodes[at + 2];
      }
      out[i * 3] = L;
      out[i * 3 + 1] = a;
      out[i * 3 + 2] = b;
    }
  }

  /**
   * L* alone of every pixel of a raster: `out[i]` is L* x `unit`, rounded.
   * @param data whole numbers that fill their array
   * @param step samples a pixel, the channels first
   */
  lightness(data: Uint8Array | Uint16Array, step: number, unit: number, out: Uint16Array): void {
    const { side, bend } = this;
    const nodes = {
      values: this.#nodes.filter((_, i) => i % 3 === 0),
      side,
      strides: Array.from(this.#step, step => step / 3),
      place: (stored: number) => stored ** bend * (side - 1),
    };
    interpolated(nodes, data, step, unit, out);
  }
}
