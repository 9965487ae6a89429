const INCH = 25.4;

/** Millimetres in a unit. A point is the printer's 1/72.27 inch in TeX and 1/72 inch everywhere else. */
const common = { mm: 1, cm: 10, in: INCH, pc: INCH / 6, px: INCH / 96 };
const web: Record<string, number> = { ...common, pt: INCH / 72, q: 0.25 };
const tex: Record<string, number> = {
  ...common,
  pt: INCH / 72.27,
  bp: INCH / 72,
  px: INCH / 72,
  pc: (12 * INCH) / 72.27,
  dd: ((1238 / 1157) * INCH) / 72.27,
  cc: ((12 * 1238) / 1157) * (INCH / 72.27),
  sp: INCH / 72.27 / 65536,
};
const typst: Record<string, number> = { mm: 1, cm: 10, in: INCH, pt: INCH / 72 };

export const units = { web, tex, typst };

/** A number written with or without a leading digit: `.5`, `12`, `1.25`. */
export const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)`;
const LENGTH = new RegExp(`^(${NUMBER})\\s*(%|[a-z]+)?$`, 'i');

/**
 * A length in mm, or undefined where it cannot be known: an unknown unit, a share of a width that nobody said, nothing
 * above zero. `whole`: mm that percents are of. `bare`: unit of a number without one.
 */
export function lengthOf(
  text: string,
  known: Record<string, number>,
  { whole, bare }: { whole?: number; bare?: string } = {},
): number | undefined {
  const match = text.length < 64 ? LENGTH.exec(text.trim()) : null;
  if (!match) return undefined;
  const unit = (match[2] ?? bare)?.toLowerCase();
  if (unit === undefined) return undefined;
  const per = unit === '%' ? whole && whole / 100 : Object.hasOwn(known, unit) ? known[unit] : undefined;
  const mm = per === undefined ? Number.NaN : Number(match[1]) * per;
  return mm > 0 && Number.isFinite(mm) ? mm : undefined;
}
