import type { Place } from '../../shared/picture';

/** A place of left-over colour as it is seen on paper. */
export interface Mark {
  place: Place;
  /** Edge in mm of the square of the same area, in print. */
  size: number;
  /** Distance in a*, b* from the picture's own grey, after the eye's and the screen's blur. */
  distance: number;
}

/**
 * What runs together on paper, in mm: about what the eye resolves in colour at reading distance (1 arc minute is 0.087 mm
 * at 300 mm, colour is seen at half of that or less; from memory) and the reach of a halftone's rosette.
 */
const BLUR = 0.2;

/**
 * A mark of so many mm needs twice the distance of a large area to be seen. Own choice: sensitivity to colour falls from
 * a few cycles a degree on, and 1 mm is half a cycle of 2.6 at 300 mm (from memory).
 */
const SMALL = 1;

/** Marks that are seen, strongest first. `perMm`: pixels on a millimetre of paper. `limit`: for a large area. */
export function visibleMarks(places: readonly Place[], perMm: number, limit: number): Mark[] {
  return places
    .map(place => {
      const width = place.width / perMm;
      const height = place.height / perMm;
      const filled = Math.min(1, width / BLUR) * Math.min(1, height / BLUR);
      return { place, size: Math.sqrt(width * height), distance: place.max * filled };
    })
    .filter(({ size, distance }) => distance >= limit * (1 + SMALL / size))
    .sort((x, y) => y.distance - x.distance);
}
