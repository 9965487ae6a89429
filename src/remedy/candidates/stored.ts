// no-unit-test: candidate.test.ts looks at what comes of it
import type { Header, Samples } from '../../picture/types';
import type { RemedyFormat } from '../../shared/remedy';
import type { Stored } from '../encode/stored';

const CHANNELS = { grey: 1, rgb: 3, cmyk: 4 } as const;

/** Numbers that are to be stored, as they would be read. */
export function samplesOf({ width, height, space, data, alpha }: Stored): Samples {
  return { width, height, space, data, alpha, channels: CHANNELS[space] };
}

/** What a file of these numbers would say of itself. */
export function headerOf(
  { width, height, space, bits, alpha, icc }: Stored,
  format: RemedyFormat,
  { orientation, ppi, remedied }: Pick<Header, 'orientation' | 'ppi' | 'remedied'>,
): Header {
  return {
    ...{ format, width, height, bits, alpha, space, icc, orientation, ppi, remedied },
    channels: CHANNELS[space],
    sample: 'uint',
    palette: false,
    inverted: false,
    spots: 0,
    page: 1,
    pages: 1,
    remarks: [],
  };
}
