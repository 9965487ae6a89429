import type { BookPicture } from '../shared/finding';
import type { PictureFacts, Place } from '../shared/picture';

/** Long edge in mm of a picture of which nobody said how large it is printed: a full page of about A4. Own choice. */
export const PAGE_EDGE = 300;
/** A header's own ppi is believed only if it gives a long edge in mm that a page can hold: cameras write 72 or 300. */
const BELIEVED = { from: 50, to: 600 };

export interface PrintedScale {
  /** Pixels on a millimetre of paper. */
  perMm: number;
  /** How it is known: from the settings, from the file's ppi, or taken for granted. */
  from: 'placed' | 'ppi' | 'assumed';
}

const MM = 25.4;

/** Width and height as the picture is seen, in pixels: EXIF orientations 5 to 8 lie on their side. */
export function uprightSize({ width, height, orientation }: PictureFacts): { width: number; height: number } {
  return orientation >= 5 ? { width: height, height: width } : { width, height };
}

export function printedScale({ facts, placed }: BookPicture): PrintedScale {
  const { width, height } = uprightSize(facts);
  const scales = [
    ...(placed?.width ? [width / placed.width] : []),
    ...(placed?.height ? [height / placed.height] : []),
  ];
  // With both edges given the picture fills the frame, and the edge that is stretched more decides.
  if (scales.length > 0) return { perMm: Math.min(...scales), from: 'placed' };
  const long = Math.max(width, height);
  const ppi = facts.ppi && Math.min(facts.ppi.x, facts.ppi.y);
  if (ppi && (long / ppi) * MM >= BELIEVED.from && (long / ppi) * MM <= BELIEVED.to)
    return { perMm: ppi / MM, from: 'ppi' };
  return { perMm: long / PAGE_EDGE, from: 'assumed' };
}

export type Box = Pick<Place, 'x' | 'y' | 'width' | 'height'>;

/** A box of the stored raster where it lies in the picture as it is seen (EXIF orientation applied). */
export function uprightBox({ x, y, width, height }: Box, facts: PictureFacts): Box {
  const right = facts.width - x - width;
  const below = facts.height - y - height;
  const lying = (x: number, y: number): Box => ({ x, y, width: height, height: width });
  switch (facts.orientation) {
    case 2:
      return { x: right, y, width, height };
    case 3:
      return { x: right, y: below, width, height };
    case 4:
      return { x, y: below, width, height };
    case 5:
      return lying(y, x);
    case 6:
      return lying(below, x);
    case 7:
      return lying(below, right);
    case 8:
      return lying(y, right);
    default:
      return { x, y, width, height };
  }
}

/** `upper left`, `middle right`, `centre`: where a box of the upright picture lies, by thirds. */
export function whereabouts(box: Box, size: { width: number; height: number }): string {
  const third = (middle: number, edge: number) => Math.min(2, Math.max(0, Math.floor((middle / edge) * 3)));
  const column = ['left', 'centre', 'right'][third(box.x + box.width / 2, size.width)];
  const row = ['upper', 'middle', 'lower'][third(box.y + box.height / 2, size.height)];
  if (row === 'middle') return column === 'centre' ? 'in the centre' : `at the ${column}, half-way up`;
  return column === 'centre' ? `in the ${row} middle` : `at the ${row} ${column}`;
}
