import { BYTES_OF_TYPE, Ifds, MOST_TAGS } from '../../picture/header/ifd';
import { LONGEST_FIELD, type Source } from '../../picture/header/source';
import type { Field, Fraction } from './fields';
import { Type } from './fields';
import { isCarried, isOfOldPixels, isRaw, Tag } from './tags';
import type { ExifTree } from './tree';

/** A TIFF's or an EXIF block's directories, as far as they can be read. */
export interface ExifRead {
  tree: ExifTree;
  /** Every tag of the first directory; of those that only the old pixels need, no values. */
  all: Map<number, Field>;
  /** Tags that point outside, or are of a kind that no 32-bit directory holds. */
  damaged: number;
  /** Another directory follows (a small preview, in EXIF), or hangs below. */
  more: boolean;
  /** It describes a camera's raw picture as well. */
  raw: boolean;
}

/** Values that BigTIFF alone has, and a directory as a value. */
const FOREIGN_TYPES = [13, 16, 17, 18];
/** Text of EXIF 3.0. */
const UTF8 = 129;

/**
 * @param at where the first directory lies; absent: where the header says
 * @throws UnreadableError where there is no directory at all
 */
export function readTree(source: Source, at?: number): ExifRead {
  const ifds = new Ifds(source);
  const reader = new FieldReader(ifds);
  const first = reader.read(at ?? ifds.first);
  const main = [...first.values()];
  const below = (parent: Map<number, Field>, id: number) => {
    const pointer = parent.get(id);
    const to = pointer && numbersOf(pointer, ifds.numbers.bigEndian)[0];
    return to ? reader.read(to) : new Map<number, Field>();
  };
  const exif = below(first, Tag.exif);
  const tree: ExifTree = {
    bigEndian: ifds.numbers.bigEndian,
    main: main.filter(({ id }) => isCarried(id)),
    exif: [...exif.values()].filter(({ id }) => id !== Tag.interop),
    gps: [...below(first, Tag.gps).values()],
    interop: [...below(exif, Tag.interop).values()],
    noteAt: reader.noteAt,
  };
  return {
    tree,
    all: first,
    damaged: reader.damaged,
    more: first.has(Tag.subDirectories) || reader.nextOf(at ?? ifds.first) !== 0,
    raw: main.some(({ id }) => isRaw(id)),
  };
}

class FieldReader {
  damaged = 0;
  noteAt: number | null = null;
  /** Tags may share their bytes, so a small file could ask for gigabytes. */
  private left = LONGEST_FIELD;

  constructor(private readonly ifds: Ifds) {}

  /** All tags of a directory that can be read; the first of two with one number. */
  read(directory: number): Map<number, Field> {
    const fields = new Map<number, Field>();
    const n = this.ifds.numbers;
    const [head, step] = this.ifds.big ? [8, 20] : [2, 12];
    let count: number;
    try {
      count = this.ifds.big ? n.u64(directory) : n.u16(directory);
    } catch {
      this.damaged++;
      return fields;
    }
    for (let i = 0; i < Math.min(count, MOST_TAGS); i++)
      try {
        const field = this.field(directory + head + i * step);
        if (field && !fields.has(field.id)) fields.set(field.id, field);
      } catch {
        this.damaged++;
      }
    return fields;
  }

  /** Link to the next directory; 0 where there is none. */
  nextOf(directory: number): number {
    const n = this.ifds.numbers;
    try {
      if (this.ifds.big) return n.u64(directory + 8 + n.u64(directory) * 20);
      return n.u32(directory + 2 + n.u16(directory) * 12);
    } catch {
      return 0;
    }
  }

  /** @returns null where it has no values @throws where they cannot be had */
  private field(at: number): Field | null {
    const n = this.ifds.numbers;
    const { big } = this.ifds;
    const [id, type] = [n.u16(at), n.u16(at + 2)];
    const count = big ? n.u64(at + 4) : n.u32(at + 4);
    if (count === 0) return null;
    if (isOfOldPixels(id)) return { id, type, count, data: Buffer.alloc(0) };
    const inline = at + (big ? 12 : 8);
    const bytes = count * (type === UTF8 ? 1 : (BYTES_OF_TYPE[type] ?? 0));
    if (bytes === 0 || bytes > this.left || (FOREIGN_TYPES.includes(type) && isCarried(id)))
      throw new Error('not a value that can be carried');
    const outside = bytes > (big ? 8 : 4);
    const offset = outside ? (big ? n.u64(inline) : n.u32(inline)) : inline;
    const data = n.source.bytes(offset, bytes);
    this.left -= bytes;
    if (id === Tag.makerNote && outside) this.noteAt = offset;
    return { id, type, count, data };
  }
}

/** Values of a field as whole numbers; empty of other types. */
export function numbersOf({ type, data }: Field, bigEndian: boolean): number[] {
  const size = type === Type.byte ? 1 : type === Type.short ? 2 : [Type.long, 13].includes(type) ? 4 : 0;
  if (size === 0) return [];
  return Array.from({ length: Math.floor(data.length / size) }, (_, i) =>
    bigEndian ? data.readUIntBE(i * size, size) : data.readUIntLE(i * size, size),
  );
}

/** The first value of a field as a fraction; null where it is none above zero. */
export function fractionOf(field: Field | undefined, bigEndian: boolean): Fraction | null {
  if (!field) return null;
  const { type, data } = field;
  const u32 = (at: number) => (bigEndian ? data.readUInt32BE(at) : data.readUInt32LE(at));
  const found: Fraction =
    type === Type.rational && data.length >= 8 ? [u32(0), u32(4)] : [numbersOf(field, bigEndian)[0] ?? 0, 1];
  return found[0] > 0 && found[1] > 0 ? found : null;
}
