/**
 * The ways a TIFF stores CIELAB, each to one: L* x 327.67, a* and b* x 256 in 16 signed bits.
 * Sources: TIFF 6.0 section 23 (CIELab), TIFF technical note 1 / ICC.1 annex (ICCLab: 8 bit offset 128; 16 bit L* 100 =
 * 0xFF00, offset 0x8000).
 */
export type LabKind = 'cielab' | 'icclab';

const L_UNIT = 327.67;
const AB_UNIT = 256;

/** @param step samples a pixel; a fourth one is alpha and is spread to 16 bits (0-32767) */
export function labFromBytes(data: Uint8Array, kind: LabKind, step: number): Int16Array {
  const out = new Int16Array(data.length);
  const ab = kind === 'cielab' ? (v: number) => (v << 24) >> 24 : (v: number) => v - 128;
  for (let i = 0; i < data.length; i += step) {
    out[i] = Math.round((data[i] / 255) * 100 * L_UNIT);
    out[i + 1] = ab(data[i + 1]) * AB_UNIT;
    out[i + 2] = ab(data[i + 2]) * AB_UNIT;
    if (step > 3) out[i + 3] = Math.round((data[i + 3] / 255) * 32767);
  }
  return out;
}

export function labFromWords(data: Uint16Array, step: number): Int16Array {
  const out = new Int16Array(data.length);
  for (let i = 0; i < data.length; i += step) {
    out[i] = Math.min(32767, Math.round((data[i] / 0xff00) * 100 * L_UNIT));
    out[i + 1] = data[i + 1] - 0x8000;
    out[i + 2] = data[i + 2] - 0x8000;
    if (step > 3) out[i + 3] = data[i + 3] >> 1;
  }
  return out;
}

/** Natural units, clamped to what 16 bits hold (L* 0-100, a* and b* within 128). */
export function labFromFloats(data: Float32Array, step: number): Int16Array {
  const out = new Int16Array(data.length);
  const clamp = (v: number, low: number, high: number) => Math.round(Math.min(high, Math.max(low, v)));
  for (let i = 0; i < data.length; i += step) {
    out[i] = clamp(data[i] * L_UNIT, 0, 32767);
    out[i + 1] = clamp(data[i + 1] * AB_UNIT, -32768, 32767);
    out[i + 2] = clamp(data[i + 2] * AB_UNIT, -32768, 32767);
    if (step > 3) out[i + 3] = clamp(data[i + 3] * 32767, 0, 32767);
  }
  return out;
}
