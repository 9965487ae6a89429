import { labToSrgb } from '../colour/srgb';
import { relativeLabOfInks } from './inks/file-colour';
import { usualGeneration } from './inks/separation';
import type { Press } from './press';
import type { Handling } from './routes';
import type { SampledPicture } from './samples';

export interface TonalRange {
  /** L* of the darkest black that this encoding can print, and of the paper. */
  black: number;
  white: number;
  /** Share of the picture (0-1) too dark to be told from black. */
  blockedShare: number;
}

/** Shadow steps within this many L* of black are lost (this project's collection of facts; common practice). */
const LOST = 3;

/** `printed`: print lightness of each zone of the picture. */
export function tonalRange(
  handling: Handling,
  picture: SampledPicture,
  press: Press,
  printed: readonly number[],
): TonalRange {
  const black = darkestBlack(handling, picture, press);
  return { black, white: press.model.white[0], blockedShare: shareBelow(picture, printed, black + LOST) };
}

function darkestBlack(handling: Handling, picture: SampledPicture, press: Press): number {
  const { daylight, reference } = press;
  const lab = new Float64Array(3);
  const at = (device: ArrayLike<number>) => {
    daylight.lab(device, null, lab);
    return lab[0];
  };
  switch (handling.kind) {
    case 'grey-to-black':
    case 'lightness-to-black':
      return reference.black;
    case 'separated':
      return press.axis(handling.generation).black;
    case 'to-rgb':
      return picture.space === 'cmyk'
        ? at(labToSrgb(relativeLabOfInks(fullInks(picture)), new Float64Array(3)))
        : at([0, 0, 0]);
    case 'kept': {
      if (daylight.dimensions === 3) return at([0, 0, 0]);
      const full = fullInks(picture);
      return full[0] + full[3] === 2 ? press.axis(usualGeneration(press.generations)).black : at(full);
    }
  }
}

/** Above this an ink is in use (the limit of `black-only` and `three-ink`). */
const IN_USE = 0.01;

/** Full tone of the inks that the picture uses: black alone, the three coloured ones, or all four. */
function fullInks(picture: SampledPicture): [number, number, number, number] {
  const uses = (inks: readonly number[]) =>
    picture.zones.some(zone => zone.clusters.some(({ mean }) => inks.some(ink => mean[ink] > IN_USE)));
  const coloured = uses([0, 1, 2]) ? 1 : 0;
  const black = uses([3]) || !coloured ? 1 : 0;
  return [coloured, coloured, coloured, black];
}

function shareBelow(picture: SampledPicture, printed: readonly number[], limit: number): number {
  const { zones, histogram } = picture;
  if (!histogram) return zones.reduce((sum, zone, i) => sum + (printed[i] < limit ? zone.weight : 0), 0);
  const points = zones.map((zone, i) => ({ L: zone.L, Lprint: printed[i] })).sort((a, b) => a.L - b.L);
  const printedAt = (L: number) => {
    let i = 0;
    while (i < points.length - 2 && points[i + 1].L < L) i++;
    const from = points[i];
    const to = points[Math.min(i + 1, points.length - 1)];
    if (to.L === from.L) return from.Lprint;
    return from.Lprint + ((L - from.L) / (to.L - from.L)) * (to.Lprint - from.Lprint);
  };
  return histogram.reduce((sum, share, L) => sum + (share > 0 && printedAt(L) < limit ? share : 0), 0);
}
