// no-unit-test: tiff.test.ts asks it for every layout
import type { Remark, Space } from '../../shared/picture';
import type { Header, TiffLayout } from '../types';
import type { UnreadableError } from './unreadable';

/** PhotometricInterpretation (TIFF 6.0 sections 4-6, 16, 23; technical note on ICCLab). */
export const Photometric = {
  whiteIsZero: 0,
  blackIsZero: 1,
  rgb: 2,
  palette: 3,
  separated: 5,
  ycbcr: 6,
  cielab: 8,
  icclab: 9,
} as const;

/** ExtraSamples (TIFF 6.0 section 18): unspecified is a saved selection or a spot ink; associated means premultiplied. */
export const Extra = { unspecified: 0, associated: 1, unassociated: 2 } as const;
const CMYK_INKS = 1;
const JPEG_IN_TIFF = 7;

interface SpaceOfPage {
  space: Space;
  channels: 1 | 3 | 4;
  alpha: boolean;
  palette: boolean;
  spots: number;
}

interface Samples {
  bits: number;
  sample: Header['sample'];
  /** InkSet: 1 CMYK, 2 others. */
  inks: number;
  names: string[];
}

/** What the samples of a page mean: colours, alpha, and what lies beside them. */
export function spaceOf(
  layout: TiffLayout,
  samples: Samples,
  remarks: Remark[],
  refuse: (what: string, doThis?: string) => UnreadableError,
): SpaceOfPage {
  const { photometric } = layout;
  const whole = [8, 16].includes(samples.bits) || samples.sample === 'float';
  const base = baseOf(photometric);
  if (!base)
    throw refuse(`The TIFF stores its colours in a way that cannot be read (photometric ${photometric})`);
  if (layout.samples < base.channels) throw refuse('The TIFF has fewer channels than its colours need');
  if (!whole && photometric !== Photometric.palette && layout.samples !== 1)
    throw refuse(`The TIFF packs several channels of ${samples.bits} bits, which cannot be read`);
  if (photometric === Photometric.ycbcr && layout.compression !== JPEG_IN_TIFF)
    throw refuse('The TIFF stores luma and chroma without JPEG, which cannot be read');
  if (photometric === Photometric.palette && (samples.sample === 'float' || samples.bits > 8))
    throw refuse('The TIFF has a palette of more than 256 colours, which cannot be read');
  const extras = layout.samples - base.channels;
  const alpha =
    extras > 0 && (layout.extra.length === 0 ? base.space !== 'cmyk' : layout.extra[0] !== Extra.unspecified);
  const spots = extras - (alpha ? 1 : 0);
  if (photometric === Photometric.separated) tellInks(samples, spots, remarks);
  else if (spots > 0)
    remarks.push({
      code: 'spot-inks',
      text: `${spots === 1 ? 'One more channel is' : `${spots} more channels are`} stored beside the picture (saved selections or spot colours); not judged.`,
    });
  return { ...base, alpha, spots, palette: photometric === Photometric.palette };
}

function baseOf(photometric: number): { space: Space; channels: 1 | 3 | 4 } | null {
  switch (photometric) {
    case Photometric.whiteIsZero:
    case Photometric.blackIsZero:
      return { space: 'grey', channels: 1 };
    case Photometric.rgb:
    case Photometric.ycbcr:
      return { space: 'rgb', channels: 3 };
    case Photometric.palette:
      // one stored index a pixel; its colours are three channels
      return { space: 'rgb', channels: 1 };
    case Photometric.separated:
      return { space: 'cmyk', channels: 4 };
    case Photometric.cielab:
    case Photometric.icclab:
      return { space: 'lab', channels: 3 };
    default:
      return null;
  }
}

function tellInks({ inks, names }: Samples, spots: number, remarks: Remark[]): void {
  if (inks !== CMYK_INKS && names.length < 4)
    remarks.push({
      code: 'spot-inks',
      text: 'The file does not name its inks; the first four are taken as cyan, magenta, yellow and black.',
    });
  else if (spots > 0) {
    const called = names.slice(4).join(', ');
    remarks.push({
      code: 'spot-inks',
      text: `${spots === 1 ? 'One spot ink is' : `${spots} spot inks are`} stored beside the four process inks${called ? ` (${called})` : ''}; not judged.`,
    });
  }
}
