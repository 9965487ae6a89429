// no-unit-test: candidate.test.ts and methods.test.ts look at what it shows
import { sharp } from '../../picture/decode-sharp';
import { shownInks } from '../../picture/raster-inks';
import { plainTiff } from '../../picture/raster-tiff';
import type { Header, Samples } from '../../picture/types';
import type { Raster } from '../../shared/reader-protocol';

/** Samples as a screen shows them: shrunk, upright, sRGB, inks by what they are judged to mean; as pictures are shown. */
export async function shownSamples(samples: Samples, header: Header, longEdge: number): Promise<Raster> {
  const inks = samples.space === 'cmyk';
  const shrunk = sharp(plainTiff(samples, header), { limitInputChannels: 32, ignoreIcc: inks })
    .autoOrient()
    .resize({ width: longEdge, height: longEdge, fit: 'inside', withoutEnlargement: true });
  const shown = inks ? await shownInks(shrunk, header) : shrunk.toColourspace('srgb');
  const { data, info } = await shown.png({ compressionLevel: 3 }).toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    orientation: header.orientation,
    fullWidth: samples.width,
    fullHeight: samples.height,
    png: data,
  };
}
