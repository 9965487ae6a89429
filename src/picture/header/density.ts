/** Pixels per inch from a header's density; null where it says none, or nothing sensible. */
export function perInch(
  x: number,
  y: number,
  unit: 'inch' | 'cm' | 'metre',
): { x: number; y: number } | null {
  const factor = { inch: 1, cm: 2.54, metre: 0.0254 }[unit];
  if (!(x > 0 && y > 0 && Number.isFinite(x) && Number.isFinite(y))) return null;
  // 300 ppi is stored as 11811 pixels per metre: a hundredth of a pixel is as fine as anybody means it
  return { x: Math.round(x * factor * 100) / 100, y: Math.round(y * factor * 100) / 100 };
}
