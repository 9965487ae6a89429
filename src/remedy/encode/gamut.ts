import { labToXyz } from '../../colour/lab';
import { XYZ_TO_SRGB } from '../../colour/srgb';
import { srgbCurve } from '../../colour/tone-curves';

/** Halvings until the share is known to 1/4096. */
const HALVINGS = 12;
/** Rounding that is no colour beyond sRGB. */
const SLACK = 1e-4;

const xyz = new Float64Array(3);

/** CIELAB D50 as sRGB (0-1), written into `rgb`; too strong a colour fades until it fits, at its own lightness. */
export function toSrgb(L: number, a: number, b: number, rgb: Float64Array): void {
  if (!linear(L, a, b, rgb)) {
    let fits = 0;
    let beyond = 1;
    for (let i = 0; i < HALVINGS; i++) {
      const share = (fits + beyond) / 2;
      if (linear(L, a * share, b * share, rgb)) fits = share;
      else beyond = share;
    }
    linear(L, a * fits, b * fits, rgb);
  }
  for (let c = 0; c < 3; c++) rgb[c] = srgbCurve.encode(Math.min(1, Math.max(0, rgb[c])));
}

/** Linear channels into `rgb`; whether all of them lie within sRGB. */
function linear(L: number, a: number, b: number, rgb: Float64Array): boolean {
  xyz[0] = L;
  xyz[1] = a;
  xyz[2] = b;
  labToXyz(xyz, xyz);
  let within = true;
  for (let c = 0; c < 3; c++) {
    const row = c * 3;
    rgb[c] = XYZ_TO_SRGB[row] * xyz[0] + XYZ_TO_SRGB[row + 1] * xyz[1] + XYZ_TO_SRGB[row + 2] * xyz[2];
    if (rgb[c] < -SLACK || rgb[c] > 1 + SLACK) within = false;
  }
  return within;
}
