import { type Field, FieldMaker } from './fields';
import type { ExifTree } from './tree';

/** Directories laid out behind a TIFF header. */
export interface Laid {
  bytes: Buffer;
  /** Where the values of a tag of the first directory lie. */
  at: Map<number, number>;
}

export const MAKER_NOTE = 0x927c;
const EXIF = 34665;
const GPS = 34853;
const INTEROP = 40965;

/** Header, entries and link (TIFF 6.0, section 2). */
const HEADER = 8;
const ENTRY = 12;
const INLINE = 4;
const directorySize = (fields: readonly Field[]) => 2 + fields.length * ENTRY + 4;

/**
 * A TIFF header and directories of fields with their values behind: an EXIF block, or the front of a TIFF. The maker's
 * note comes to lie where it lay, because what is inside may count from the block's beginning.
 */
export function laidOut(tree: ExifTree): Laid {
  const make = new FieldMaker(tree.bigEndian);
  const pointer = (id: number, to: readonly Field[]) => (to.length > 0 ? [make.long(id, 0)] : []);
  const exif = sorted([...tree.exif, ...pointer(INTEROP, tree.interop)]);
  const main = sorted([...tree.main, ...pointer(EXIF, exif), ...pointer(GPS, tree.gps)]);
  const room = new Room(tree);
  const pieces: [at: number, bytes: Buffer][] = [];
  const place = (fields: readonly Field[]) => {
    const at = room.take(directorySize(fields));
    const values = new Map<number, number>();
    const entries = fields.map(({ id, type, count, data }, i) => {
      const entry = Buffer.alloc(ENTRY);
      make.words([id, type], 2).copy(entry);
      make.words([count], 4).copy(entry, 4);
      const inline = data.length <= INLINE;
      const to = inline
        ? at + 2 + i * ENTRY + 8
        : id === MAKER_NOTE && tree.noteAt !== null
          ? tree.noteAt
          : room.take(data.length);
      values.set(id, to);
      if (inline) data.copy(entry, 8);
      else {
        make.words([to], 4).copy(entry, 8);
        pieces.push([to, data]);
      }
      return entry;
    });
    pieces.push([at, Buffer.concat([make.words([fields.length], 2), ...entries, Buffer.alloc(4)])]);
    return { at, values };
  };
  const first = place(main);
  const links: [at: number | undefined, to: number][] = [];
  if (exif.length > 0) {
    const { at, values } = place(exif);
    links.push([first.values.get(EXIF), at]);
    if (tree.interop.length > 0) links.push([values.get(INTEROP), place(sorted(tree.interop)).at]);
  }
  if (tree.gps.length > 0) links.push([first.values.get(GPS), place(sorted(tree.gps)).at]);

  const bytes = Buffer.alloc(room.end);
  bytes.write(tree.bigEndian ? 'MM' : 'II', 'latin1');
  make.words([42], 2).copy(bytes, 2);
  make.words([first.at], 4).copy(bytes, 4);
  for (const [at, piece] of pieces) piece.copy(bytes, at);
  for (const [at, to] of links) make.words([to], 4).copy(bytes, at);
  return { bytes, at: first.values };
}

const sorted = (fields: readonly Field[]): Field[] => [...fields].sort((a, b) => a.id - b.id);

/** Hands out room from the header on, around the maker's note. */
class Room {
  private low = HEADER;
  private high: number;
  private readonly noteAt: number;

  constructor({ noteAt, exif }: ExifTree) {
    const note = noteAt === null ? undefined : exif.find(field => field.id === MAKER_NOTE);
    this.noteAt = note && noteAt !== null ? noteAt : Number.POSITIVE_INFINITY;
    this.high = even(this.noteAt + (note?.data.length ?? 0));
  }

  /** Offsets are even (TIFF 6.0, section 2). */
  take(bytes: number): number {
    const size = even(bytes);
    const low = this.low + size <= this.noteAt;
    const at = low ? this.low : this.high;
    if (low) this.low += size;
    else this.high += size;
    return at;
  }

  get end(): number {
    return this.noteAt === Number.POSITIVE_INFINITY ? this.low : this.high;
  }
}

const even = (n: number) => n + (n % 2);
