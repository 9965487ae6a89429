// no-unit-test: index.test.ts stores through it
import type { TonePlane } from '../grey/plane';
import { toSrgb } from './gamut';

type Numbers = Uint8Array | Uint16Array;

const room = (length: number, bits: 8 | 16): Numbers =>
  bits === 8 ? new Uint8Array(length) : new Uint16Array(length);

/** The same level in `channels` channels, alpha behind them. `levels`: by entry of the plane. */
export function singleNumbers(plane: TonePlane, levels: Uint16Array, bits: 8 | 16, channels: 1 | 3): Numbers {
  const { index } = plane;
  // half as large a table stays nearer to the processor
  const table = bits === 8 ? Uint8Array.from(levels) : levels;
  const step = channels + (plane.alpha ? 1 : 0);
  const out = room(index.length * step, bits);
  if (step === 1) for (let i = 0; i < index.length; i++) out[i] = table[index[i]];
  else if (channels === 1) for (let i = 0; i < index.length; i++) out[i * step] = table[index[i]];
  else
    for (let i = 0, to = 0; i < index.length; i++, to += step) {
      const level = table[index[i]];
      out[to] = level;
      out[to + 1] = level;
      out[to + 2] = level;
    }
  addAlpha(out, plane, step, bits);
  return out;
}

/** Black ink alone. */
export function inkNumbers({ index }: TonePlane, table: Uint16Array, bits: 8 | 16): Numbers {
  const out = room(index.length * 4, bits);
  for (let i = 0, to = 3; i < index.length; i++, to += 4) out[to] = table[index[i]];
  return out;
}

/** R, G, B of lightness with the tint that goes with it. */
export function tintedNumbers(plane: TonePlane, bits: 8 | 16): Numbers {
  const { index, lightness, tint } = plane;
  const full = 2 ** bits - 1;
  const table = new Uint16Array(lightness.length * 3);
  const rgb = new Float64Array(3);
  for (let i = 0; i < lightness.length; i++) {
    toSrgb(lightness[i], tint![i * 2], tint![i * 2 + 1], rgb);
    for (let c = 0; c < 3; c++) table[i * 3 + c] = Math.round(rgb[c] * full);
  }
  const step = plane.alpha ? 4 : 3;
  const out = room(index.length * step, bits);
  for (let i = 0, to = 0; i < index.length; i++, to += step) {
    const at = index[i] * 3;
    out[to] = table[at];
    out[to + 1] = table[at + 1];
    out[to + 2] = table[at + 2];
  }
  addAlpha(out, plane, step, bits);
  return out;
}

/** R, G, B where some pixels keep their colour; `table`: level of those that keep none. */
export function colouredNumbers(plane: TonePlane, table: Uint16Array, bits: 8 | 16): Numbers {
  const { index, lightness, colour } = plane;
  const full = 2 ** bits - 1;
  const step = plane.alpha ? 4 : 3;
  const out = room(index.length * step, bits);
  const rgb = new Float64Array(3);
  for (let i = 0, to = 0; i < index.length; i++, to += step) {
    const a = colour![i * 2];
    const b = colour![i * 2 + 1];
    if ((a | b) === 0) {
      out[to] = out[to + 1] = out[to + 2] = table[index[i]];
      continue;
    }
    toSrgb(lightness[index[i]], a / 256, b / 256, rgb);
    for (let c = 0; c < 3; c++) out[to + c] = Math.round(rgb[c] * full);
  }
  addAlpha(out, plane, step, bits);
  return out;
}

/** Alpha as the last channel, at the depth of the others. */
function addAlpha(out: Numbers, { alpha }: TonePlane, step: number, bits: 8 | 16): void {
  if (!alpha) return;
  const from = alpha instanceof Uint8Array ? 255 : 65535;
  const scale = (2 ** bits - 1) / from;
  for (let i = 0, to = step - 1; i < alpha.length; i++, to += step) out[to] = Math.round(alpha[i] * scale);
}
