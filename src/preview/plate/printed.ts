import type { PrintedSize } from '../../shared/sheet';
import type { Size } from './view';

/** What a screen is taken to have where nobody measured it: CSS's own inch. */
export const USUAL_PPI = 96;
const MM = 25.4;

/** CSS pixels on a pixel of the picture where it is as large as its print. */
export const printedScale = ({ perMm }: PrintedSize, ppi: number | null): number =>
  (ppi ?? USUAL_PPI) / MM / perMm;

const FROM: Record<PrintedSize['from'], string> = {
  placed: 'as it is placed',
  ppi: 'by the pixels per inch in the file, since no one says how it is placed',
  assumed: 'a guess: no one says how it is placed, so its long edge is taken for a full page',
};

/** How large the picture is printed, and how far the screen can be trusted to show that. */
export function printedWords({ width, height }: Size, printed: PrintedSize, ppi: number | null): string {
  const mm = (pixels: number) => Math.round(pixels / printed.perMm);
  const size = `${mm(width)} × ${mm(height)} mm, ${FROM[printed.from]}`;
  const screen =
    ppi === null
      ? `The screen is taken to have ${USUAL_PPI} pixels on an inch, which few have: measure it once.`
      : `By your own measurement the screen has ${Math.round(ppi)} pixels on an inch.`;
  return `Printed size: ${size}. ${screen}`;
}

/** Pixels per inch of a screen on which a line of `pixels` measures `mm`; null where no screen is so. */
export function measured(pixels: number, mm: number): number | null {
  const ppi = (pixels * MM) / mm;
  return ppi >= 20 && ppi <= 1000 ? ppi : null;
}
