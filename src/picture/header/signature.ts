import type { Format } from '../../shared/picture';
import type { Source } from './source';

/** What a file is by its first bytes, whatever its name says. Other trades' formats are named so that we can say so. */
export interface Signature {
  format: Format;
  /** The format in words, for messages. */
  name: string;
}

const TABLE: [offset: number, bytes: string, format: Format, name: string][] = [
  [0, '\xff\xd8\xff', 'jpeg', 'JPEG'],
  [0, '\x89PNG\r\n\x1a\n', 'png', 'PNG'],
  // before TIFF, in whose clothes it comes
  [8, 'CR\x02\0', 'unknown', 'camera raw'],
  [0, 'II*\0', 'tiff', 'TIFF'],
  [0, 'MM\0*', 'tiff', 'TIFF'],
  [0, 'II+\0', 'tiff', 'BigTIFF'],
  [0, 'MM\0+', 'tiff', 'BigTIFF'],
  [8, 'WEBP', 'webp', 'WebP'],
  [0, 'GIF87a', 'gif', 'GIF'],
  [0, 'GIF89a', 'gif', 'GIF'],
  [0, '8BPS', 'psd', 'layered document (PSD)'],
  [0, '\0\0\0\x0cjP  \r\n\x87\n', 'jp2', 'JPEG 2000'],
  [0, '\xff\x4f\xff\x51', 'jp2', 'JPEG 2000 codestream'],
  [0, '%PDF-', 'pdf', 'PDF'],
  [0, '\xff\x0a', 'unknown', 'JPEG XL'],
  [0, '\0\0\0\x0cJXL ', 'unknown', 'JPEG XL'],
  [0, 'v/1\x01', 'unknown', 'OpenEXR'],
  [0, '#?RADIANCE', 'unknown', 'Radiance HDR'],
  [0, '%!PS', 'unknown', 'PostScript'],
  [0, '\xc5\xd0\xd3\xc6', 'unknown', 'PostScript (EPS)'],
  [0, 'PK\x03\x04', 'unknown', 'ZIP archive'],
];
const POINTER = 'version https://git-lfs.github.com/spec/v1';

/** @returns the format by content; `unknown` with an empty name where nothing fits */
export function signatureOf(source: Source): Signature {
  const head = source.bytes(0, Math.min(source.size, 1024)).toString('latin1');
  for (const [offset, bytes, format, name] of TABLE)
    if (head.startsWith(bytes, offset)) {
      if (format === 'webp' && !head.startsWith('RIFF')) continue;
      return { format, name };
    }
  if (head.startsWith('ftyp', 4)) return isoMedia(head);
  if (head.startsWith(POINTER)) return { format: 'lfs-pointer', name: 'large-file pointer' };
  if (head.startsWith('BM') && isBitmap(head)) return { format: 'bmp', name: 'BMP' };
  if (/^P[1-7]\s/.test(head)) return { format: 'unknown', name: 'portable bitmap (PNM)' };
  if (
    /^\s*(\xef\xbb\xbf)?\s*(<\?xml[^>]*>\s*|<!--[\s\S]*?-->\s*|<!DOCTYPE svg[^>]*>\s*)*<svg[\s>]/.test(head)
  )
    return { format: 'svg', name: 'SVG' };
  return { format: 'unknown', name: '' };
}

/** AVIF and HEIC share a container; `mif1` and `msf1` say nothing, so the compatible brands are asked as well. */
function isoMedia(head: string): Signature {
  const end = Math.min(head.length, Math.max(16, head.charCodeAt(2) * 256 + head.charCodeAt(3)));
  const brands = [head.slice(8, 12)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(head.slice(at, at + 4));
  if (brands.some(b => b === 'avif' || b === 'avis')) return { format: 'avif', name: 'AVIF' };
  if (brands.some(b => /^(hei[cxms]|hev[cxms]|mif1|msf1)$/.test(b))) return { format: 'heic', name: 'HEIC' };
  if (brands[0] === 'jp2 ' || brands[0] === 'jpx ') return { format: 'jp2', name: 'JPEG 2000' };
  if (brands[0] === 'crx ') return { format: 'unknown', name: 'camera raw' };
  return { format: 'unknown', name: 'media container' };
}

/** `BM` alone begins many texts: the size of the second header must be one that exists. */
function isBitmap(head: string): boolean {
  return head.length > 18 && [12, 40, 52, 56, 64, 108, 124].includes(head.charCodeAt(14));
}
