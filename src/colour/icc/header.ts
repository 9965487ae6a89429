import type { Space } from '../../shared/picture';

/** What the first 128 bytes and the tag table of a profile say. */
export interface IccHeader {
  space: Space;
  /** Device class in words. */
  class: 'input' | 'display' | 'output' | 'colour space';
  /** Such as 2.4 or 4.3. */
  version: number;
}

const SPACES: Record<string, Space> = { GRAY: 'grey', 'RGB ': 'rgb', CMYK: 'cmyk', 'Lab ': 'lab' };
const CLASSES: Record<string, IccHeader['class']> = {
  scnr: 'input',
  mntr: 'display',
  prtr: 'output',
  spac: 'colour space',
};
const OTHER_CLASSES: Record<string, string> = {
  link: 'a device link',
  abst: 'an abstract profile',
  nmcl: 'a list of named colours',
};

const HEADER = 128;
const TAG = 12;
/** LittleCMS reads no more. */
const MOST_TAGS = 100;
/** The largest press profiles hold a few megabytes. */
const LARGEST = 64 * 2 ** 20;

/**
 * Reads and checks the header and the tag table (ICC.1:2010, 7.2 and 7.3), so that the library is never handed a profile
 * that points outside itself.
 * @throws Error in plain words where the bytes are no profile, are cut short, or hold one that no picture can use
 */
export function readIccHeader(bytes: Uint8Array): IccHeader {
  if (bytes.length < HEADER + 4)
    throw new Error(`the ICC profile is cut short: ${bytes.length} bytes do not even hold its header`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (word(bytes, 36) !== 'acsp')
    throw new Error('these bytes are no ICC profile: the signature "acsp" is missing');
  if (bytes.length > LARGEST) throw new Error(`the ICC profile is larger than ${LARGEST / 2 ** 20} MB`);
  const size = view.getUint32(0);
  if (size < HEADER + 4 || size > bytes.length)
    throw new Error(`the ICC profile is cut short: it says ${size} bytes and ${bytes.length} are there`);
  const major = view.getUint8(8);
  if (major !== 2 && major !== 4)
    throw new Error(`the ICC profile is of version ${major}; versions 2 and 4 can be used`);
  checkTags(view, size);
  return {
    space: spaceOf(word(bytes, 16)),
    class: classOf(word(bytes, 12)),
    version: major + (view.getUint8(9) >> 4) / 10,
  };
}

function checkTags(view: DataView, size: number) {
  const count = view.getUint32(HEADER);
  if (count === 0 || count > MOST_TAGS || HEADER + 4 + count * TAG > size)
    throw new Error(`the ICC profile is damaged: its table names ${count} parts`);
  for (let i = 0; i < count; i++) {
    const at = HEADER + 4 + i * TAG;
    const offset = view.getUint32(at + 4);
    const length = view.getUint32(at + 8);
    if (offset < HEADER || offset + length > size)
      throw new Error(`the ICC profile is damaged: its part ${i + 1} of ${count} lies outside it`);
  }
}

function spaceOf(signature: string): Space {
  const space = SPACES[signature];
  if (!space)
    throw new Error(
      `the ICC profile is for ${quoted(signature)} values; grey, RGB, CMYK and Lab can be used`,
    );
  return space;
}

function classOf(signature: string): IccHeader['class'] {
  const known = CLASSES[signature];
  if (known) return known;
  const other = OTHER_CLASSES[signature] ?? `of an unknown class ${quoted(signature)}`;
  throw new Error(`the ICC profile is ${other}, which says nothing about a picture's values`);
}

const word = (bytes: Uint8Array, at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));

/** A signature as text, with what is no printable letter left out. */
const quoted = (signature: string) => `"${signature.replace(/[^ -~]/g, '?').trim()}"`;
