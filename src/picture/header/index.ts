import type { Header } from '../types';
import { readGif } from './gif';
import { readHeif } from './heif';
import { readJpeg } from './jpeg';
import { refuseFormat } from './others';
import { readPng } from './png';
import { signatureOf } from './signature';
import type { Source } from './source';
import { readTiff } from './tiff';
import { UnreadableError } from './unreadable';
import { readWebp } from './webp';

export { bufferSource, fileSource, type Source } from './source';
export { UnreadableError } from './unreadable';

/**
 * What a file says of its pictures, one entry a page; a page whose own header is damaged stands as the error.
 * @throws UnreadableError where the whole file cannot be read
 */
export function readHeaders(source: Source): (Header | UnreadableError)[] {
  if (source.size === 0) throw new UnreadableError('empty', 'The file is empty. Copy or export it again.');
  const { format, name } = signatureOf(source);
  try {
    return read(source, format, name).map(page =>
      page instanceof UnreadableError ? page : checkSize(told(page)),
    );
  } catch (error) {
    if (!(error instanceof UnreadableError) || error.format !== 'unknown') throw error;
    throw new UnreadableError(error.reason, error.text, format, error.size);
  }
}

/** The header of one page, from 1. @throws UnreadableError */
export function readHeader(source: Source, page = 1): Header {
  const header = readHeaders(source).find(h => h.page === page);
  if (!header) throw new UnreadableError('missing', `The file has no page ${page}.`);
  if (header instanceof UnreadableError) throw header;
  return header;
}

function read(source: Source, format: Header['format'], name: string): (Header | UnreadableError)[] {
  switch (format) {
    case 'jpeg':
      return [readJpeg(source)];
    case 'png':
      return [readPng(source)];
    case 'tiff':
      return readTiff(source);
    case 'webp':
      return [readWebp(source)];
    case 'gif':
      return [readGif(source)];
    case 'avif':
    case 'heic':
      return [refuseHeic(readHeif(source, format))];
    case 'lfs-pointer':
      throw new UnreadableError(
        'not-fetched',
        'The picture itself has not been fetched: the file is only its large-file pointer. Fetch it with "git lfs pull".',
        'lfs-pointer',
      );
    default:
      return refuseFormat(source, format, name);
  }
}

/** The container is AVIF's, the codec is another, which the decoder does not have. */
function refuseHeic(header: Header): Header {
  if (header.format === 'heic')
    throw new UnreadableError(
      'format',
      'A HEIC picture cannot be read. Save it as TIFF or JPEG.',
      'heic',
      header,
    );
  return header;
}

/** What every format can say of itself that a reader of facts should know. */
function told(header: Header): Header {
  if (header.orientation !== 1)
    header.remarks.push({
      code: 'orientation',
      text: 'The header asks to show the picture turned; it was judged as it is stored.',
    });
  if (header.inverted && header.tiff)
    header.remarks.push({
      code: 'min-is-white',
      text: 'The file stores white as 0; its values were turned round, so that 0 is black.',
    });
  return header;
}

function checkSize(header: Header): Header | UnreadableError {
  if (header.width > 0 && header.height > 0) return header;
  const error = new UnreadableError(
    'corrupt',
    `The picture has no pixels (${header.width} x ${header.height}). Export it again.`,
    header.format,
    header,
  );
  error.page = header.page;
  return error;
}
