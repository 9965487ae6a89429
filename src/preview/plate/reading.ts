import { t } from '@vscode/l10n';
import type { PixelReading } from '../../shared/look';

/** A pixel's stored values and what they mean, in one line. */
export function readingWords({ x, y, channels, full, alpha, lab }: PixelReading): string {
  const stored = channels.map(({ name, value }) => `${name} ${valueWords(value, full)}`).join('  ');
  const inks = channels.length === 4;
  const percent =
    inks && full ? ` (${channels.map(c => Math.round((100 * c.value) / full)).join(' / ')} %)` : '';
  const values = full === null ? stored : `${t('{0} of {1}', stored, full)}${percent}`;
  const seen = lab
    ? t(
        'L* {0}  a* {1}  b* {2}, chroma {3}',
        signed(lab.L),
        signed(lab.a),
        signed(lab.b),
        lab.chroma.toFixed(1),
      )
    : t('nothing is seen here');
  return alpha !== null && alpha < 1
    ? t('x {0}, y {1}: {2}, {3} % opaque, on paper white; {4}', x, y, values, Math.round(100 * alpha), seen)
    : t('x {0}, y {1}: {2}; {3}', x, y, values, seen);
}

const valueWords = (value: number, full: number | null) => (full === null ? signed(value, 3) : String(value));

/** With a true minus sign, and no minus before nothing. */
function signed(value: number, places = 1): string {
  const text = value.toFixed(places);
  return Number(text) === 0 ? (0).toFixed(places) : text.replace('-', '−');
}
