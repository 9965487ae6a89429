// no-unit-test: test/layout/latex/index.test.ts reads sizes by it
import { lengthOf, NUMBER, units } from '../length';
import type { LayoutSize } from '../types';

/** Widths in mm at one place of a document, where they are known. */
export interface Measures {
  textwidth?: number;
  linewidth?: number;
  columnwidth?: number;
  paperwidth?: number;
}

const SHARE = new RegExp(`^(${NUMBER})?\\s*\\*?\\s*\\\\(textwidth|linewidth|columnwidth|hsize|paperwidth)$`);

/** A TeX length in mm. */
export function texLength(text: string, measures: Measures): number | undefined {
  const share = text.length < 64 ? SHARE.exec(text.trim()) : null;
  if (!share) return lengthOf(text, units.tex);
  const whole = measures[share[2] === 'hsize' ? 'linewidth' : (share[2] as keyof Measures)];
  const mm = whole === undefined ? Number.NaN : whole * Number(share[1] ?? 1);
  return mm > 0 ? mm : undefined;
}

type Options = readonly (readonly [key: string, value: string])[];

/**
 * The size that options of `\includegraphics` give. Keys work in their order: what comes after a quarter turn is said
 * of the turned picture. Null where nothing is said, or where the picture is cropped.
 */
export function graphicsSize(options: Options, measures: Measures): LayoutSize | null {
  const size: LayoutSize = {};
  let lying = false;
  let fits = false;
  for (const [key, value] of options) {
    if (key === 'trim' || key === 'viewport') return null;
    if (key === 'angle') {
      const turn = Math.abs(Number(value)) % 180;
      if (turn !== 0 && turn !== 90) return size.width || size.height || size.scale ? size : null;
      if (turn === 90) lying = !lying;
    } else if (key === 'scale') size.scale = Number(value) > 0 ? Number(value) : undefined;
    else if (key === 'keepaspectratio') fits = value !== 'false';
    else if (key === 'width' || key === 'height' || key === 'totalheight') {
      const edge = (key === 'width') !== lying ? 'width' : 'height';
      const mm = texLength(value, measures);
      if (mm !== undefined) size[edge] = mm;
    }
  }
  if (size.width && size.height && fits) size.fits = true;
  return size.width || size.height || size.scale ? size : null;
}

/** Widths of paper by the names that document classes know, mm; portrait. ISO 216, and letter and legal. */
const PAPERS: Record<string, [number, number]> = {
  a3paper: [297, 420],
  a4paper: [210, 297],
  a5paper: [148, 210],
  a6paper: [105, 148],
  b4paper: [250, 353],
  b5paper: [176, 250],
  letterpaper: [215.9, 279.4],
  legalpaper: [215.9, 355.6],
};

/** Widths that the options of a class or of the geometry package say. */
export function pageMeasures(options: Options, before: Measures = {}): Measures {
  const said = new Map(options);
  const named = Object.keys(PAPERS).find(name => said.has(name) || said.get('paper') === name);
  const length = (...keys: string[]) => {
    for (const key of keys) {
      const value = said.get(key);
      const mm =
        value === undefined ? undefined : texLength(value.split(',')[0].replace('{', ''), { paperwidth });
      if (mm !== undefined) return mm;
    }
    return undefined;
  };
  let paperwidth = named ? PAPERS[named][said.has('landscape') ? 1 : 0] : before.paperwidth;
  paperwidth = length('paperwidth', 'papersize') ?? paperwidth;
  const sides = said.get('hmargin')?.split(',') ?? [];
  const side = (at: number, ...keys: string[]) => {
    const own = length(...keys);
    if (own !== undefined) return own;
    const both = sides[at] ?? sides[0];
    return both === undefined ? length('margin') : texLength(both.replace(/[{}]/g, ''), { paperwidth });
  };
  const [left, right] = [side(0, 'left', 'lmargin', 'inner'), side(1, 'right', 'rmargin', 'outer')];
  const between = paperwidth && left && right ? paperwidth - left - right : undefined;
  const textwidth =
    length('textwidth', 'width', 'total', 'body', 'text') ?? (between && between > 0 ? between : undefined);
  return { ...before, paperwidth, textwidth: textwidth ?? before.textwidth };
}
