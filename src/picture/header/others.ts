// no-unit-test: index.test.ts opens one file of each format
import type { Format, Space } from '../../shared/picture';
import { Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

const PSD_MODES: Record<number, [name: string, space: Space | null]> = {
  0: ['bitmap', 'grey'],
  1: ['grey', 'grey'],
  2: ['indexed colour', 'rgb'],
  3: ['RGB', 'rgb'],
  4: ['CMYK', 'cmyk'],
  7: ['multichannel', null],
  8: ['duotone', 'grey'],
  9: ['Lab', 'lab'],
};

/**
 * Formats that are known but not read: says what the file is and what to save instead.
 * @returns never; always throws UnreadableError `format` with the size where the header tells it
 */
export function refuseFormat(source: Source, format: Format, name: string): never {
  switch (format) {
    case 'psd':
      throw psd(source);
    case 'bmp':
      throw refuse('bmp', 'A BMP cannot be read', 'Save it as PNG or TIFF', bmpSize(source));
    case 'jp2':
      throw refuse('jp2', 'A JPEG 2000 picture cannot be read', 'Save it as TIFF or JPEG', {
        width: 0,
        height: 0,
      });
    case 'svg':
      throw refuse('svg', 'An SVG is a drawing: it has no pixels to judge', 'Export the picture it places', {
        width: 0,
        height: 0,
      });
    case 'pdf':
      throw refuse('pdf', 'A PDF is a document, not a picture', 'Name the pictures it was made from', {
        width: 0,
        height: 0,
      });
    default:
      throw new UnreadableError(
        'format',
        name
          ? `The file is of a kind that cannot be read (${name}). Save it as TIFF, JPEG or PNG.`
          : 'The file is no picture of a known kind. Save it as TIFF, JPEG or PNG, or leave it out of the book.',
      );
  }
}

function refuse(
  format: Format,
  what: string,
  doThis: string,
  size: { width: number; height: number },
): UnreadableError {
  return new UnreadableError('format', `${what}. ${doThis}.`, format, size);
}

/** Layered document: version, channels, height, width, depth, mode, all big-endian from byte 4 (its file format specification). */
function psd(source: Source): UnreadableError {
  const n = new Numbers(source, true);
  const size = { width: n.u32(18), height: n.u32(14) };
  const bits = n.u16(22);
  const [mode, space] = PSD_MODES[n.u16(24)] ?? ['unknown mode', null];
  const error = refuse(
    'psd',
    `A layered document (${mode}, ${bits} bits, ${size.width} x ${size.height} pixels) cannot be read`,
    'Save a flattened TIFF beside it',
    size,
  );
  const channels = space === null ? n.u16(12) : { grey: 1, rgb: 3, lab: 3, cmyk: 4 }[space];
  error.stored = { channels, bits, space };
  return error;
}

function bmpSize(source: Source): { width: number; height: number } {
  const n = new Numbers(source, false);
  if (n.u32(14) === 12) return { width: n.u16(18), height: n.u16(20) };
  // a negative height says "top row first"
  return { width: n.u32(18), height: Math.abs(n.u32(22) | 0) };
}
