import type { Remark } from '../../shared/picture';
import type { Remedied } from '../../shared/remedy';
import type { Header, TiffLayout } from '../types';
import { LONGEST_PACKET } from '../xmp/packet';
import { recordIn } from '../xmp/record';
import { orientationOf, resolutionOf } from './exif';
import { type Directory, Ifds } from './ifd';
import { LONGEST_FIELD, type Source } from './source';
import { spaceOf } from './tiff-space';
import { UnreadableError } from './unreadable';

/** A book's picture has a handful of pages; thousands are a broken chain. */
export const MOST_PAGES = 1000;

const SUBFILE = 254;
const WIDTH = 256;
const HEIGHT = 257;
const BITS = 258;
const COMPRESSION = 259;
const PHOTOMETRIC = 262;
const FILL_ORDER = 266;
const SAMPLES_PER_PIXEL = 277;
const PLANAR = 284;
const COLOR_MAP = 320;
const BELOW = 330;
const INK_SET = 332;
const INK_NAMES = 333;
const EXTRA_SAMPLES = 338;
const SAMPLE_FORMAT = 339;
const XMP = 700;
const PROFILE = 34675;
const RAW_VERSION = 50706;
const MOST_STRIPS = 65536;
/** Offsets and lengths, of strips and of tiles. */
const PIXELS = [
  [273, 279],
  [324, 325],
];

/**
 * How many bytes can come of one, by compression: none; LZW (a 12-bit code for at most 4096 bytes); deflate (zlib's
 * technical notes: 1032), by its two numbers; PackBits (two bytes for at most 128).
 */
const MOST_SQUEEZED = new Map([
  [1, 1],
  [5, 2731],
  [8, 1032],
  [32946, 1032],
  [32773, 64],
]);

const REDUCED = 1;
const MASK = 4;

/**
 * One header for every page that is a picture (TIFF 6.0, BigTIFF). Reduced-resolution copies and masks are left out
 * unless the file has nothing else; sub-directories are never followed.
 */
export function readTiff(source: Source): (Header | UnreadableError)[] {
  const ifds = new Ifds(source);
  const directories = chain(ifds);
  const kind = (d: Directory) => ifds.value1(d, SUBFILE, 0);
  const full = directories.filter(d => (kind(d) & (REDUCED | MASK)) === 0);
  if (full.length === 0 && directories.some(isOfCamera)) throw cameraRaw();
  const chosen = full.length > 0 ? full : directories.slice(0, 1);
  // the decoder reads every directory to count the pages, so a cut one spoils them all
  const incomplete = directories.some(d => isCut(ifds, d));
  return chosen.map(directory => {
    try {
      const header = readPage(ifds, directory);
      header.page = directories.indexOf(directory) + 1;
      header.pages = directories.length;
      header.incomplete = incomplete;
      header.impossible = cannotHold(source, header);
      if (full.length === 0)
        header.remarks.push({
          code: 'embedded-preview',
          text: 'The file holds only a small preview that can be read; what is said here is said of the preview.',
        });
      return header;
    } catch (error) {
      // one damaged page must not take the others with it
      if (!(error instanceof UnreadableError) || directories.length === 1) throw error;
      error.page = directories.indexOf(directory) + 1;
      return error;
    }
  });
}

/** A picture that lies in a directory below, behind its own preview, is a camera's. */
const isOfCamera = ({ tags }: Directory) => tags.has(BELOW) || tags.has(RAW_VERSION);

const cameraRaw = () =>
  new UnreadableError(
    'format',
    "The file is a camera's raw file, of which only a small preview can be read here. Develop it, and save it as TIFF or JPEG.",
    'tiff',
  );

/** Every directory of the main chain once; a link back ends the walk. */
function chain(ifds: Ifds): Directory[] {
  const directories: Directory[] = [];
  const seen = new Set<number>();
  for (let at = ifds.first; at !== 0 && !seen.has(at); ) {
    seen.add(at);
    if (seen.size > MOST_PAGES)
      throw new UnreadableError(
        'too-large',
        `The file has more than ${MOST_PAGES} pages, which is the limit. Split it.`,
        'tiff',
      );
    let directory: Directory;
    try {
      directory = ifds.read(at);
      if (directory.tags.size === 0)
        throw new UnreadableError(
          'corrupt',
          'The TIFF says nothing of its picture: that part of the file was never written, or was written over. Copy or export it again.',
          'tiff',
        );
    } catch (error) {
      if (directories.length === 0) throw error;
      break; // the pages before a broken link are still pictures
    }
    directories.push(directory);
    at = directory.next;
  }
  if (directories.length === 0) throw new UnreadableError('corrupt', 'The TIFF holds no page.', 'tiff');
  return directories;
}

function readPage(ifds: Ifds, d: Directory): Header {
  const size = { width: ifds.value1(d, WIDTH, 0), height: ifds.value1(d, HEIGHT, 0) };
  const samples = ifds.value1(d, SAMPLES_PER_PIXEL, 1);
  const depths = ifds.values(d, BITS);
  const bits = depths[0] ?? 1;
  const layout: TiffLayout = {
    photometric: ifds.value1(d, PHOTOMETRIC, -1),
    photometricAt: d.tags.get(PHOTOMETRIC)?.offset ?? -1,
    bigEndian: ifds.numbers.bigEndian,
    samples,
    extra: ifds.values(d, EXTRA_SAMPLES),
    extraAt: d.tags.get(EXTRA_SAMPLES)?.offset ?? -1,
    compression: ifds.value1(d, COMPRESSION, 1),
    colorMap: ifds.values(d, COLOR_MAP),
    bareAt: null,
  };
  const refuse = (what: string, doThis = 'Save it as an 8- or 16-bit TIFF') =>
    new UnreadableError('format', `${what}. ${doThis}.`, 'tiff', size);
  if (depths.some(depth => depth !== bits))
    throw refuse('The channels of the TIFF differ in depth, which cannot be read');
  const sample = (['uint', 'uint', 'int', 'float'] as const)[ifds.value1(d, SAMPLE_FORMAT, 1)];
  if (!sample) throw refuse('The TIFF holds samples of a kind that is no tone (complex or undefined)');
  refuseDepths(sample, bits, refuse);
  const remarks: Remark[] = [];
  const inks = ifds.value1(d, INK_SET, 1);
  const names = ifds.bytes(d, INK_NAMES)?.toString('latin1').split('\0').filter(Boolean) ?? [];
  const space = spaceOf(layout, { bits, sample, inks, names }, remarks, refuse);
  layout.bareAt = bareAt(ifds, d, layout, { ...size, bits });
  return {
    format: 'tiff',
    ...size,
    channels: space.palette ? 3 : space.channels,
    bits: space.palette ? 8 : bits,
    sample,
    alpha: space.alpha,
    palette: space.palette,
    space: space.space,
    inverted: layout.photometric === 0,
    spots: space.spots,
    page: 1,
    pages: 1,
    orientation: orientationOf(ifds, d),
    ppi: resolutionOf(ifds, d),
    icc: profileOf(ifds, d, remarks),
    tiff: layout,
    remedied: remedyOf(ifds, d),
    remarks,
  };
}

function refuseDepths(
  sample: Header['sample'],
  bits: number,
  refuse: (what: string) => UnreadableError,
): void {
  if (sample === 'uint' && ![1, 2, 4, 8, 16].includes(bits))
    throw refuse(`The TIFF has ${bits} bits a channel, which cannot be read`);
  if (sample === 'int') throw refuse('The TIFF holds signed numbers, which are no tones');
  if (sample === 'float' && bits !== 32)
    throw refuse(`The TIFF holds ${bits}-bit floating-point numbers, which cannot be read`);
}

/** A page of a few bytes that claims gigabytes is cut (or lies), and no room must be made for it. */
function cannotHold(source: Source, { width, height, bits, palette, tiff }: Header): boolean {
  const stored = palette ? Math.log2(tiff!.colorMap.length / 3) : bits;
  const most = MOST_SQUEEZED.get(tiff!.compression) ?? Number.POSITIVE_INFINITY;
  return (width * height * tiff!.samples * stored) / 8 > source.size * most;
}

/**
 * Many a TIFF is nothing but its samples behind a directory: strips without compression, one behind the other. Then
 * there is nothing to decode.
 */
function bareAt(
  ifds: Ifds,
  d: Directory,
  { compression, samples, bigEndian }: TiffLayout,
  { width, height, bits }: { width: number; height: number; bits: number },
): number | null {
  const planar = samples > 1 && ifds.value1(d, PLANAR, 1) !== 1;
  if (compression !== 1 || planar || ifds.value1(d, FILL_ORDER, 1) !== 1) return null;
  if (bits !== 8 && (bits !== 16 || bigEndian)) return null;
  const count = d.tags.get(PIXELS[0][0])?.count ?? 0;
  if (count === 0 || count > MOST_STRIPS || d.tags.has(PIXELS[1][0])) return null;
  const offsets = ifds.values(d, PIXELS[0][0]);
  const lengths = ifds.values(d, PIXELS[0][1]);
  const inOnePiece = offsets.every((at, i) => i === 0 || at === offsets[i - 1] + lengths[i - 1]);
  const total = lengths.reduce((sum, n) => sum + n, 0);
  const whole = total === (width * height * samples * bits) / 8 && lengths.length === offsets.length;
  return inOnePiece && whole ? offsets[0] : null;
}

function isCut(ifds: Ifds, d: Directory): boolean {
  if (d.cut) return true;
  return PIXELS.some(([at, length]) => {
    // small tiles of a giant: too many to ask
    if ((d.tags.get(at)?.count ?? 0) > MOST_STRIPS) return false;
    const lengths = ifds.values(d, length);
    return ifds.values(d, at).some((offset, i) => offset + (lengths[i] ?? 0) > ifds.numbers.source.size);
  });
}

function profileOf(ifds: Ifds, d: Directory, remarks: Remark[]): Buffer | null {
  const tag = d.tags.get(PROFILE);
  if (!tag || tag.count === 0) return null;
  try {
    if (tag.count <= LONGEST_FIELD) return ifds.bytes(d, PROFILE);
  } catch {
    // falls through: a profile outside the file is no reason to refuse the picture
  }
  remarks.push({ code: 'bad-profile', text: 'The embedded profile lies outside the file; it was not used.' });
  return null;
}

function remedyOf(ifds: Ifds, d: Directory): Remedied | null {
  const tag = d.tags.get(XMP);
  if (!tag || tag.count > LONGEST_PACKET) return null;
  try {
    const packet = ifds.bytes(d, XMP);
    return packet && recordIn(packet);
  } catch {
    return null; // it lies outside the file, which is said where pixels do
  }
}
