import type { SeenBox } from '../../shared/look';

/** A raster as it is stored, and the EXIF orientation (1-8) by which it is seen. */
export interface Stored {
  width: number;
  height: number;
  orientation: number;
}

/** Width and height as the picture is seen: orientations 5 to 8 lie on their side. */
export const seenSize = ({ width, height, orientation }: Stored) =>
  orientation >= 5 ? { width: height, height: width } : { width, height };

/** Where a pixel of the picture as it is seen is stored (EXIF 2.32, Orientation: what row 0 and column 0 are). */
export function storedPoint(x: number, y: number, { width, height, orientation }: Stored): [number, number] {
  const right = width - 1;
  const below = height - 1;
  switch (orientation) {
    case 2:
      return [right - x, y];
    case 3:
      return [right - x, below - y];
    case 4:
      return [x, below - y];
    case 5:
      return [y, x];
    case 6:
      return [y, below - x];
    case 7:
      return [right - y, below - x];
    case 8:
      return [right - y, x];
    default:
      return [x, y];
  }
}

/** The same for a box of whole pixels. */
export function storedBox(box: SeenBox, stored: Stored): SeenBox {
  const [x1, y1] = storedPoint(box.x, box.y, stored);
  const [x2, y2] = storedPoint(box.x + box.width - 1, box.y + box.height - 1, stored);
  return {
    x: Math.min(x1, x2),
    y: Math.min(y1, y2),
    width: Math.abs(x1 - x2) + 1,
    height: Math.abs(y1 - y2) + 1,
  };
}

/** What of a box lies in the picture, in whole pixels: at least one. */
export function within({ x, y, width, height }: SeenBox, size: { width: number; height: number }): SeenBox {
  const clamp = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const left = clamp(Math.floor(x), size.width - 1);
  const top = clamp(Math.floor(y), size.height - 1);
  const right = Math.max(left + 1, clamp(Math.ceil(x + width), size.width));
  const bottom = Math.max(top + 1, clamp(Math.ceil(y + height), size.height));
  return { x: left, y: top, width: right - left, height: bottom - top };
}
