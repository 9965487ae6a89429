import { LONGEST_FIELD, Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

/** One tag of a TIFF directory (TIFF 6.0, section 2): numbers already in reading order, or where the bytes lie. */
export interface Tag {
  type: number;
  count: number;
  /** Where the value lies in the file. */
  offset: number;
}

export interface Directory {
  tags: Map<number, Tag>;
  /** Offset of the next directory, 0 at the end. */
  next: number;
  /** Some tag's value lies beyond the end of the file. */
  cut: boolean;
}

/** By type code (TIFF 6.0 section 2; EXIF; BigTIFF); 0 where there is none. */
export const BYTES_OF_TYPE = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8];
/** A directory of a picture has some tens of tags; a thousand is a broken file. */
export const MOST_TAGS = 1000;
/** No tag that we read as numbers holds more (a 16-bit colour map has 3 x 65536). */
const MOST_NUMBERS = 3 << 16;

/** TIFF, BigTIFF and EXIF directories. */
export class Ifds {
  readonly numbers: Numbers;
  readonly big: boolean;
  /** Offset of the first directory. */
  readonly first: number;

  /** @param source bytes that begin with the byte-order mark */
  constructor(source: Source) {
    const order = source.bytes(0, 2).toString('latin1');
    if (order !== 'II' && order !== 'MM') throw corrupt('its byte-order mark is missing');
    this.numbers = new Numbers(source, order === 'MM');
    const magic = this.numbers.u16(2);
    if (magic !== 42 && magic !== 43) throw corrupt('its version number is unknown');
    this.big = magic === 43;
    if (this.big && this.numbers.u16(4) !== 8) throw corrupt('its offsets have an unknown size');
    this.first = this.big ? this.numbers.u64(8) : this.numbers.u32(4);
  }

  read(offset: number): Directory {
    const n = this.numbers;
    const count = this.big ? n.u64(offset) : n.u16(offset);
    if (count > MOST_TAGS) throw corrupt('a directory has an implausible number of tags');
    const tags = new Map<number, Tag>();
    let cut = false;
    const [head, step, inline] = this.big ? [8, 20, 8] : [2, 12, 4];
    for (let i = 0, at = offset + head; i < count; i++, at += step) {
      const type = n.u16(at + 2);
      const values = this.big ? n.u64(at + 4) : n.u32(at + 4);
      const field = at + (this.big ? 12 : 8);
      const bytes = values * (BYTES_OF_TYPE[type] ?? 0);
      const offset = bytes <= inline ? field : this.big ? n.u64(field) : n.u32(field);
      cut ||= offset + bytes > n.source.size;
      tags.set(n.u16(at), { type, count: values, offset });
    }
    const link = offset + head + count * step;
    const last = n.source.size - (this.big ? 8 : 4);
    // some writers leave the last link out altogether
    return { tags, next: link > last ? 0 : this.big ? n.u64(link) : n.u32(link), cut };
  }

  /** All values of a tag as numbers; empty where the tag is absent or holds none. */
  values(directory: Directory, id: number): number[] {
    const tag = directory.tags.get(id);
    if (!tag) return [];
    if (tag.count > MOST_NUMBERS) throw corrupt(`tag ${id} is implausibly long`);
    const size = BYTES_OF_TYPE[tag.type] ?? 0;
    if (size === 0) return [];
    return Array.from({ length: tag.count }, (_, i) => this.value(tag.type, tag.offset + i * size));
  }

  /** First value of a tag, or the default that the standard gives. */
  value1(directory: Directory, id: number, otherwise: number): number {
    return this.values(directory, id)[0] ?? otherwise;
  }

  /** The bytes of an UNDEFINED or BYTE tag; null where it is absent or too long to be meant. */
  bytes(directory: Directory, id: number): Buffer | null {
    const tag = directory.tags.get(id);
    if (!tag || tag.count === 0 || tag.count > LONGEST_FIELD) return null;
    return this.numbers.source.bytes(tag.offset, tag.count);
  }

  private value(type: number, at: number): number {
    const n = this.numbers;
    switch (BYTES_OF_TYPE[type]) {
      case 1:
        return n.u8(at);
      case 2:
        return n.u16(at);
      case 4:
        return n.u32(at);
      default:
        // 5 and 10 are fractions of two whole numbers
        return type === 5 || type === 10 ? n.u32(at) / n.u32(at + 4) : n.u64(at);
    }
  }
}

function corrupt(what: string): UnreadableError {
  return new UnreadableError('corrupt', `The header is damaged: ${what}. Export the picture again.`, 'tiff');
}
