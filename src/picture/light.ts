// no-unit-test: small.test.ts makes pictures light
import type { Raster, SmallPicture } from '../shared/reader-protocol';

/** Smaller in bytes: JPEG, with full colour since marks may be tiny, where nothing is seen through; else PNG. */
export async function light({ png, fullWidth, fullHeight }: Raster, edge: number): Promise<SmallPicture> {
  // a program that shows no picture needs no decoder
  const { sharp } = await import('./decode-sharp');
  const picture = sharp(png).resize({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true });
  const { isOpaque } = await sharp(png).stats();
  if (!isOpaque) return { type: 'image/png', bytes: await picture.png().toBuffer(), fullWidth, fullHeight };
  const bytes = await picture.removeAlpha().jpeg({ quality: 85, chromaSubsampling: '4:4:4' }).toBuffer();
  return { type: 'image/jpeg', bytes, fullWidth, fullHeight };
}
