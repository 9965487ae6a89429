import { labToSrgb, srgbToLab } from '../colour/srgb';

const BYTE = 255;

/** What becomes of red, green and blue of a neutral grey, by its stored value 0-255; three tables, 0-255. */
export type TintTable = [red: Uint8Array, green: Uint8Array, blue: Uint8Array];

/**
 * A tone scale as tables for the pixels of a picture: between its greys everything is linear.
 * @param lightness the file's L*, falling from paper to black
 * @param lab what prints at each
 * @param times how many times stronger a*, b* are drawn than they are forecast
 */
export function tintTable(
  lightness: readonly number[],
  lab: readonly (readonly [number, number, number])[],
  times: number,
): TintTable {
  const table: TintTable = [new Uint8Array(256), new Uint8Array(256), new Uint8Array(256)];
  const colour = new Float64Array(3);
  for (let value = 0; value <= BYTE; value++) {
    const [L] = srgbToLab([value / BYTE, value / BYTE, value / BYTE], colour);
    const after = lightness.findIndex(at => at <= L);
    const i = after < 0 ? lightness.length - 1 : Math.max(1, after);
    const share = Math.min(1, Math.max(0, (lightness[i - 1] - L) / (lightness[i - 1] - lightness[i])));
    for (let c = 0; c < 3; c++) {
      const mixed = lab[i - 1][c] + share * (lab[i][c] - lab[i - 1][c]);
      colour[c] = c === 0 ? mixed : times * mixed;
    }
    labToSrgb(colour, colour);
    for (let c = 0; c < 3; c++) table[c][value] = Math.round(colour[c] * BYTE);
  }
  return table;
}

/** The same from what becomes of greys at evenly spaced values from black to white, all 0-1. */
export function tableOf(drawing: readonly (readonly number[])[]): TintTable {
  const table = (values: readonly number[]) =>
    Uint8Array.from({ length: 256 }, (_, value) => {
      const at = (value / BYTE) * (values.length - 1);
      const i = Math.min(values.length - 2, Math.floor(at));
      return Math.round(BYTE * (values[i] + (at - i) * (values[i + 1] - values[i])));
    });
  const [red, green, blue] = drawing;
  return [table(red), table(green), table(blue)];
}

/** Luma weights of Rec. ITU-R BT.709. */
const LUMA = [0.2126, 0.7152, 0.0722];

/**
 * Draws pixels (R, G, B, alpha) as they print, in place. A forecast has the tone of the file's greys in it already, so
 * it is taken out; `residual`: left-over colour comes on top of it.
 */
export function tint(pixels: Uint8ClampedArray, [red, green, blue]: TintTable, residual: boolean): void {
  for (let i = 0; i < pixels.length; i += 4) {
    const [r, g, b] = [pixels[i], pixels[i + 1], pixels[i + 2]];
    const grey = Math.round(LUMA[0] * r + LUMA[1] * g + LUMA[2] * b);
    pixels[i] = red[residual ? r : grey];
    pixels[i + 1] = green[residual ? g : grey];
    pixels[i + 2] = blue[residual ? b : grey];
  }
}
