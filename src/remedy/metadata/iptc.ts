import { textOf } from './source/text';

// Data sets of IPTC-IIM 4.2: marker, record, number, length, value (section 1.5).

interface DataSet {
  record: number;
  number: number;
  value: Buffer;
}

const TAG_MARKER = 0x1c;
/** Lengths from here on are of an extended data set. */
const EXTENDED = 0x8000;
const APPLICATION = 2;
/** Coded character set: which one the texts are written in. */
const CHARACTERS = { record: 1, number: 90 };
/** ISO 2022: from here on UTF-8. */
const UTF8 = Buffer.from('\x1b%G', 'latin1');
/** Of the application record, what is no text: its version, the caption as a picture, the preview. */
const NO_TEXT = new Set([0, 125, 200, 201, 202]);
/** What may stand more than once (section 6 of IIM 4.2), by the application record's numbers. */
const REPEATABLE = new Set([4, 12, 20, 25, 26, 27, 45, 47, 50, 80, 85, 118, 122]);
/** Names of what people write, for those who read what was left out. */
const NAMES: Record<number, string> = {
  5: 'title',
  10: 'urgency',
  15: 'category',
  40: 'special instructions',
  55: 'date created',
  60: 'time created',
  90: 'city',
  92: 'sublocation',
  95: 'province or state',
  101: 'country',
  103: 'transmission reference',
  105: 'headline',
  110: 'credit',
  115: 'source',
  116: 'copyright notice',
  120: 'caption',
};

/** IPTC data as data sets, in the byte order of the standard; null where they are none. */
export function iptcBytes(bytes: Buffer): Buffer | null {
  if (bytes.length === 0 || bytes[0] === TAG_MARKER) return bytes;
  // stored as 32-bit numbers of the other byte order by some writers of TIFF
  if (bytes.length % 4 === 0 && bytes[3] === TAG_MARKER) return Buffer.from(bytes).swap32();
  return null;
}

/**
 * Two blocks of IPTC data of one file as one: nothing that only the second says is lost. What may stand once and is said
 * in two ways stays as the first says it, and the second's way is told.
 */
export function iptcMerged(first: Buffer, second: Buffer, told: string[]): Buffer {
  const one = dataSets(first);
  const other = dataSets(second);
  if (same(one, other)) return first;
  const [mine, theirs] = sameCharacters(one, other);
  const more = theirs.filter(set => {
    if (mine.some(each => isSame(each, set))) return false;
    if (repeats(set)) return true;
    const taken = mine.find(each => isOfOneKind(each, set));
    if (taken && isText(set)) told.push(contradiction(set, taken));
    return !taken;
  });
  if (more.length === 0) return first;
  // records stand in their order
  return bytesOf([...mine, ...more].sort((a, b) => a.record - b.record));
}

const isOfOneKind = (a: Pick<DataSet, 'record' | 'number'>, b: DataSet) =>
  a.record === b.record && a.number === b.number;
const isSame = (a: DataSet, b: DataSet) => isOfOneKind(a, b) && a.value.equals(b.value);
const same = (a: readonly DataSet[], b: readonly DataSet[]) =>
  a.length === b.length && a.every((set, i) => isSame(set, b[i]));
const repeats = ({ record, number }: DataSet) => record === APPLICATION && REPEATABLE.has(number);
const isText = ({ record, number }: DataSet) => record === APPLICATION && !NO_TEXT.has(number);

const contradiction = (left: DataSet, kept: DataSet) =>
  `The file says its IPTC ${NAMES[left.number] ?? `data set 2:${left.number}`} in two ways: "${textOf(kept.value)}" was kept, "${textOf(left.value)}" was left out.`;

/** Both in one character set: UTF-8 where they differ in it and one of them has more than ASCII. */
function sameCharacters(one: DataSet[], other: DataSet[]): [DataSet[], DataSet[]] {
  const said = [one, other].map(sets => sets.find(set => isOfOneKind(CHARACTERS, set))?.value);
  const alike = said[0] && said[1] ? said[0].equals(said[1]) : said[0] === said[1];
  if (alike || [...one, ...other].every(set => !isText(set) || set.value.every(byte => byte < 0x80)))
    return [one, other];
  const characters = { ...CHARACTERS, value: UTF8 };
  const put = (sets: DataSet[]) => [
    characters,
    ...sets
      .filter(set => !isOfOneKind(CHARACTERS, set))
      .map(set => (isText(set) ? { ...set, value: Buffer.from(textOf(set.value)) } : set)),
  ];
  return [put(one), put(other)];
}

/** As far as they are whole. */
function dataSets(bytes: Buffer): DataSet[] {
  const sets: DataSet[] = [];
  for (let at = 0; at + 5 <= bytes.length && bytes[at] === TAG_MARKER; ) {
    let start = at + 5;
    let length = bytes.readUInt16BE(at + 3);
    if (length >= EXTENDED) {
      const digits = length - EXTENDED;
      if (digits === 0 || digits > 4 || start + digits > bytes.length) break;
      length = bytes.readUIntBE(start, digits);
      start += digits;
    }
    if (start + length > bytes.length) break;
    sets.push({
      record: bytes[at + 1],
      number: bytes[at + 2],
      value: bytes.subarray(start, start + length),
    });
    at = start + length;
  }
  return sets;
}

function bytesOf(sets: readonly DataSet[]): Buffer {
  return Buffer.concat(
    sets.flatMap(({ record, number, value }) => {
      const long = value.length >= EXTENDED;
      const head = Buffer.alloc(long ? 9 : 5);
      head.set([TAG_MARKER, record, number]);
      head.writeUInt16BE(long ? EXTENDED + 4 : value.length, 3);
      if (long) head.writeUInt32BE(value.length, 5);
      return [head, value];
    }),
  );
}
