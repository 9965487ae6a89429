import { Ns, type Packet } from '../../../picture/xmp/packet';
import type { RemedyFormat } from '../../../shared/remedy';
import type { Stored } from '../../encode/stored';
import type { Density } from '../density';
import { type Property, remove, replace } from './properties';

/** What would say of the new numbers what was true of the old ones only. */
const FALSE_NOW: Property[] = [
  ...[
    'Compression',
    'PhotometricInterpretation',
    'SamplesPerPixel',
    'BitsPerSample',
    'PlanarConfiguration',
    'YCbCrCoefficients',
    'YCbCrPositioning',
    'YCbCrSubSampling',
    'TransferFunction',
    'WhitePoint',
    'PrimaryChromaticities',
    'ReferenceBlackWhite',
    'NativeDigest',
  ].map((name): Property => [Ns.tiff, name]),
  ...['ComponentsConfiguration', 'CompressedBitsPerPixel', 'Gamma', 'NativeDigest'].map(
    (name): Property => [Ns.exif, name],
  ),
  [Ns.photoshop, 'ICCProfile'],
  [Ns.xmp, 'Thumbnails'],
  // of one state of one file (ISO 16684-1, section 8.7): the new file is another
  [Ns.xmpMM, 'InstanceID'],
  [Ns.xmpNote, 'HasExtendedXMP'],
];

const COLOR_MODE = { grey: '1', rgb: '3', cmyk: '4' } as const;
const UNIT = { none: '1', inch: '2', cm: '3' } as const;

/** Takes out of a packet, or puts right, what the written file would contradict. */
export function putRight(
  packet: Packet,
  { width, height, space }: Stored,
  format: RemedyFormat,
  orientation: number,
  density: Density | null,
): void {
  for (const property of FALSE_NOW) remove(packet, property);
  const tiff = (name: string, value: string) => replace(packet, [Ns.tiff, name], value);
  tiff('Orientation', String(orientation));
  tiff('ImageWidth', String(width));
  tiff('ImageLength', String(height));
  replace(packet, [Ns.exif, 'PixelXDimension'], String(width));
  replace(packet, [Ns.exif, 'PixelYDimension'], String(height));
  replace(packet, [Ns.exif, 'ColorSpace'], space === 'rgb' ? '1' : '65535');
  replace(packet, [Ns.photoshop, 'ColorMode'], COLOR_MODE[space]);
  replace(packet, [Ns.dc, 'format'], `image/${format}`);
  if (density) {
    tiff('XResolution', density.x.join('/'));
    tiff('YResolution', density.y.join('/'));
    tiff('ResolutionUnit', UNIT[density.unit]);
  } else for (const name of ['XResolution', 'YResolution', 'ResolutionUnit']) remove(packet, [Ns.tiff, name]);
}
