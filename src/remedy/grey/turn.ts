import type { TonePlane } from './plane';

/** Where pixel x, y of the upright picture lies in the stored one, `width` x `height`, by EXIF orientation (2-8). */
const SOURCE: Record<number, (x: number, y: number, width: number, height: number) => [number, number]> = {
  2: (x, y, w) => [w - 1 - x, y],
  3: (x, y, w, h) => [w - 1 - x, h - 1 - y],
  4: (x, y, _, h) => [x, h - 1 - y],
  5: (x, y) => [y, x],
  6: (x, y, _, h) => [y, h - 1 - x],
  7: (x, y, w, h) => [w - 1 - y, h - 1 - x],
  8: (x, y, w) => [w - 1 - y, x],
};

/** The picture turned as its EXIF orientation asks (CIPA DC-008, tag 274), so that 1 is right for it. */
export function upright(plane: TonePlane, orientation: number): TonePlane {
  const source = SOURCE[orientation];
  if (!source) return plane;
  const { width, height } = plane;
  const lies = orientation >= 5;
  const [newWidth, newHeight] = lies ? [height, width] : [width, height];
  const turned = <T extends Uint8Array | Uint16Array | Int16Array>(data: T, step: number): T => {
    const out = new (data.constructor as new (n: number) => T)(data.length);
    for (let y = 0, to = 0; y < newHeight; y++) {
      // along a row the source moves by a constant
      const [x0, y0] = source(0, y, width, height);
      const [x1, y1] = source(1, y, width, height);
      const stride = (y1 - y0) * width + (x1 - x0);
      for (let x = 0, from = y0 * width + x0; x < newWidth; x++, from += stride)
        for (let c = 0; c < step; c++) out[to++] = data[from * step + c];
    }
    return out;
  };
  return {
    ...plane,
    width: newWidth,
    height: newHeight,
    index: turned(plane.index, 1),
    alpha: plane.alpha && turned(plane.alpha, 1),
    colour: plane.colour && turned(plane.colour, 2),
  };
}
