// no-unit-test: raster.test.ts shows every layout through it
import type { Header, Samples } from './types';

const SHORT = 3;
const LONG = 4;
const UNDEFINED = 7;

const PHOTOMETRIC = { grey: 1, rgb: 2, cmyk: 5, lab: 8 };

/**
 * Samples as an uncompressed single-strip TIFF (TIFF 6.0) with their profile: the one container in which every space,
 * depth and alpha can be handed to the decoder for showing.
 */
export function plainTiff(samples: Samples, header: Header): Buffer {
  const { width, height, channels, alpha, space } = samples;
  const step = channels + (alpha ? 1 : 0);
  const pixels = wholeNumbers(samples.data, step);
  const bits = pixels.BYTES_PER_ELEMENT * 8;
  const profile = space === 'lab' ? null : header.icc;
  const tags: [id: number, type: number, values: number[] | Uint8Array][] = [
    [256, LONG, [width]],
    [257, LONG, [height]],
    [258, SHORT, new Array<number>(step).fill(bits)],
    [259, SHORT, [1]],
    [262, SHORT, [PHOTOMETRIC[space]]],
    [273, LONG, [0]], // where the strip begins: known once the directory is laid out
    [274, SHORT, [header.orientation]],
    [277, SHORT, [step]],
    [278, LONG, [height]],
    [279, LONG, [pixels.byteLength]],
    [284, SHORT, [1]],
    ...(alpha ? ([[338, SHORT, [2]]] as [number, number, number[]][]) : []),
    ...(profile ? ([[34675, UNDEFINED, profile]] as [number, number, Uint8Array][]) : []),
  ];
  const data = Buffer.from(pixels.buffer, pixels.byteOffset, pixels.byteLength);
  return Buffer.concat([directory(tags), data]);
}

/** Lays out header, directory and the values that do not fit into it; the strip follows directly. */
function directory(tags: [id: number, type: number, values: number[] | Uint8Array][]): Buffer {
  const fixed = 8 + 2 + tags.length * 12 + 4;
  const size = (type: number) => (type === SHORT ? 2 : type === LONG ? 4 : 1);
  const outside = tags.reduce(
    (sum, [, type, v]) => sum + (v.length * size(type) > 4 ? even(v.length * size(type)) : 0),
    0,
  );
  const out = Buffer.alloc(fixed + outside);
  out.write('II*\0', 'latin1');
  out.writeUInt32LE(8, 4);
  out.writeUInt16LE(tags.length, 8);
  let free = fixed;
  tags.forEach(([id, type, given], i) => {
    const at = 10 + i * 12;
    const values = id === 273 ? [out.length] : given;
    out.writeUInt16LE(id, at);
    out.writeUInt16LE(type, at + 2);
    out.writeUInt32LE(values.length, at + 4);
    const bytes = values.length * size(type);
    let to = at + 8;
    if (bytes > 4) {
      out.writeUInt32LE(free, to);
      to = free;
      free += even(bytes);
    }
    for (let k = 0; k < values.length; k++) out.writeUIntLE(values[k], to + k * size(type), size(type));
  });
  return out;
}

/** Floats are brought to 16 bits: they are only to be looked at. */
function wholeNumbers(data: Samples['data'], step: number): Uint8Array | Uint16Array {
  if (data instanceof Float32Array)
    return Uint16Array.from(data, v => Math.round(Math.min(1, Math.max(0, v || 0)) * 65535));
  if (data instanceof Int16Array) return labWords(data, step);
  return data;
}

/** Our L* runs to 32767 (so does its alpha), TIFF's to 65535; a* and b* are the same 16 signed bits. */
function labWords(data: Int16Array, step: number): Uint16Array {
  const out = Uint16Array.from(data);
  const whole = (i: number) => (out[i] = Math.round((data[i] * 65535) / 32767));
  for (let i = 0; i < out.length; i += step) {
    whole(i);
    if (step > 3) whole(i + 3);
  }
  return out;
}

function even(n: number): number {
  return n + (n & 1);
}
