import { t } from '@vscode/l10n';
import type { PrintedSize } from '../../shared/sheet';
import type { Size } from './view';

/** What a screen is taken to have where nobody measured it: CSS's own inch. */
export const USUAL_PPI = 96;
const MM = 25.4;

/** CSS pixels on a pixel of the picture where it is as large as its print. */
export const printedScale = ({ perMm }: PrintedSize, ppi: number | null): number =>
  (ppi ?? USUAL_PPI) / MM / perMm;

/** How large the picture is printed, and how far the screen can be trusted to show that. */
export function printedWords({ width, height }: Size, printed: PrintedSize, ppi: number | null): string {
  const mm = (pixels: number) => Math.round(pixels / printed.perMm);
  const screen =
    ppi === null
      ? t('The screen is taken to have {0} pixels on an inch, which few have: measure it once.', USUAL_PPI)
      : t('By your own measurement the screen has {0} pixels on an inch.', Math.round(ppi));
  return `${sizeWords(mm(width), mm(height), printed.from)} ${screen}`;
}

/** `width`, `height`: in mm. */
function sizeWords(width: number, height: number, from: PrintedSize['from']): string {
  switch (from) {
    case 'placed':
      return t('Printed size: {0} × {1} mm, as it is placed.', width, height);
    case 'ppi':
      return t(
        'Printed size: {0} × {1} mm, by the pixels per inch in the file, since no one says how it is placed.',
        width,
        height,
      );
    case 'assumed':
      return t(
        'Printed size: {0} × {1} mm, a guess: no one says how it is placed, so its long edge is taken for a full page.',
        width,
        height,
      );
  }
}

/** Pixels per inch of a screen on which a line of `pixels` measures `mm`; null where no screen is so. */
export function measured(pixels: number, mm: number): number | null {
  const ppi = (pixels * MM) / mm;
  return ppi >= 20 && ppi <= 1000 ? ppi : null;
}
