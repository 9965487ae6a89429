import type { LayoutSize } from '../../layout';
import { uprightSize } from '../../rules/printed';
import type { BookPicture } from '../../shared/finding';
import type { PictureFacts } from '../../shared/picture';

const MM = 25.4;

/**
 * Of all sizes at which layouts place a picture the one with the fewest pixels on a millimetre, which decides whether
 * it prints sharp. Null where none is known: a share of a width that nobody said, a scale of a picture without ppi.
 */
export function largestPlaced(sizes: readonly LayoutSize[], facts: PictureFacts): BookPicture['placed'] {
  const pixels = uprightSize(facts);
  if (!pixels.width || !pixels.height) return null;
  let largest: { perMm: number; placed: { width?: number; height?: number } } | null = null;
  for (const size of sizes) {
    const placed = printed(size, pixels, facts);
    if (!placed) continue;
    const edges = (['width', 'height'] as const).flatMap(edge =>
      placed[edge] ? pixels[edge] / placed[edge] : [],
    );
    const perMm = Math.min(...edges);
    if (!largest || perMm < largest.perMm) largest = { perMm, placed };
  }
  return largest?.placed ?? null;
}

function printed(
  { width, height, scale, fits }: LayoutSize,
  pixels: { width: number; height: number },
  { ppi }: PictureFacts,
): { width?: number; height?: number } | null {
  if (!width && !height) return scale && ppi ? { width: (pixels.width / ppi.x) * MM * scale } : null;
  // between two edges the picture is as large as the tighter one allows
  if (fits && width && height) return pixels.width / width > pixels.height / height ? { width } : { height };
  return { ...(width && { width }), ...(height && { height }) };
}
