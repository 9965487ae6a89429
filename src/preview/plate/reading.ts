import type { PixelReading } from '../../shared/look';

/** A pixel's stored values and what they mean, in one line. */
export function readingWords({ x, y, channels, full, alpha, lab }: PixelReading): string {
  const stored = channels.map(({ name, value }) => `${name} ${valueWords(value, full)}`).join('  ');
  const inks = channels.length === 4;
  const percent =
    inks && full ? ` (${channels.map(c => Math.round((100 * c.value) / full)).join(' / ')} %)` : '';
  const scale = full === null ? '' : ` of ${full}`;
  const glass = alpha !== null && alpha < 1 ? `, ${Math.round(100 * alpha)} % opaque, on paper white` : '';
  const meaning = lab
    ? `L* ${signed(lab.L)}  a* ${signed(lab.a)}  b* ${signed(lab.b)}, chroma ${lab.chroma.toFixed(1)}`
    : 'nothing is seen here';
  return `x ${x}, y ${y}: ${stored}${scale}${percent}${glass}; ${meaning}`;
}

const valueWords = (value: number, full: number | null) => (full === null ? signed(value, 3) : String(value));

/** With a true minus sign, and no minus before nothing. */
function signed(value: number, places = 1): string {
  const text = value.toFixed(places);
  return Number(text) === 0 ? (0).toFixed(places) : text.replace('-', '−');
}
