// no-unit-test: small.test.ts makes pictures light
import type { Raster, SmallPicture } from '../shared/reader-protocol';

/** Smaller in bytes: JPEG, with full colour since marks may be tiny. Nothing is seen through what is shown. */
export async function light({ png, fullWidth, fullHeight }: Raster, edge: number): Promise<SmallPicture> {
  // a program that shows no picture needs no decoder
  const { sharp } = await import('./decode-sharp');
  const picture = sharp(png).resize({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true });
  const bytes = await picture.jpeg({ quality: 85, chromaSubsampling: '4:4:4' }).toBuffer();
  return { type: 'image/jpeg', bytes, fullWidth, fullHeight };
}
