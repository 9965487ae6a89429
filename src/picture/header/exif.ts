import { perInch } from './density';
import { type Directory, Ifds } from './ifd';
import { bufferSource } from './source';

export interface Exif {
  /** 1-8; 1 where nothing is said. */
  orientation: number;
  ppi: { x: number; y: number } | null;
}

/** EXIF block, from its byte-order mark on. A broken one is no reason to refuse the picture: it says nothing then. */
export function parseExif(block: Buffer): Exif {
  try {
    const ifds = new Ifds(bufferSource(block));
    const main = ifds.read(ifds.first);
    return { orientation: orientationOf(ifds, main), ppi: resolutionOf(ifds, main) };
  } catch {
    return { orientation: 1, ppi: null };
  }
}

export function orientationOf(ifds: Ifds, directory: Directory): number {
  const value = ifds.value1(directory, 274, 1);
  return value >= 1 && value <= 8 ? value : 1;
}

/** TIFF 6.0 section 8: unit 2 is the inch (the default), 3 the centimetre, 1 none. */
export function resolutionOf(ifds: Ifds, directory: Directory): { x: number; y: number } | null {
  const unit = ifds.value1(directory, 296, 2);
  if (unit !== 2 && unit !== 3) return null;
  const x = ifds.value1(directory, 282, 0);
  return perInch(x, ifds.value1(directory, 283, x), unit === 3 ? 'cm' : 'inch');
}
