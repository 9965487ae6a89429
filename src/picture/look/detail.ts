import type { Detail, SeenBox } from '../../shared/look';
import { shownAs } from '../raster';
import { plainTiff } from '../raster-tiff';
import type { Samples } from '../types';
import type { OpenPage } from './kept';
import { seenSize, storedBox, within } from './upright';

/** A part of the picture as `rasterOf` shows it whole, at full resolution unless that is more than `longEdge` pixels. */
export async function detailOf(
  { header, samples }: OpenPage,
  wished: SeenBox,
  longEdge: number,
): Promise<Detail> {
  const { width, height } = samples;
  const stored = { width, height, orientation: header.orientation };
  const box = within(wished, seenSize(stored));
  const part = cropped(samples, storedBox(box, stored));
  const { data } = await shownAs(plainTiff(part, header), header, { longEdge });
  return { box, png: data };
}

function cropped(samples: Samples, { x, y, width, height }: SeenBox): Samples {
  const step = samples.channels + (samples.alpha ? 1 : 0);
  const row = width * step;
  const Kind = samples.data.constructor as new (length: number) => Samples['data'];
  const data = new Kind(row * height);
  for (let i = 0; i < height; i++) {
    const from = ((y + i) * samples.width + x) * step;
    data.set(samples.data.subarray(from, from + row), i * row);
  }
  return { ...samples, width, height, data };
}
