// no-unit-test: test/remedy/file/lossless-jpeg and test/outside/lossless-jpeg.test.ts read every coefficient through it
// The coded data of a JPEG, bit by bit (ISO/IEC 10918-1, ITU-T T.81), for the remedies: in an instance of its own, whose
// memory the caller lays out. A job is a list of u32, mostly addresses. It is done in many calls, so that the function is
// compiled as well as can be before the picture ends.

const MARK: u32 = 0xff;
const BLOCK: u32 = 64;

/** What is wrong with coded data; 0: nothing. */
export const NO_CODE: i32 = 1;
export const BREAKS_OFF: i32 = 2;
export const TOO_MANY: i32 = 3;
export const NO_RESTART: i32 = 4;
export const MORE_DATA: i32 = 5;

/**
 * Takes the zeros behind 0xFF away, and restart markers, in place. Where each part between those ends goes to `ends`
 * (u32, in bytes). Returns how many there are; 0: the markers are not in their order.
 */
export function unstuff(from: usize, end: usize, ends: usize): u32 {
  let to = from;
  let parts: u32 = 0;
  for (let at = from; at < end; at++) {
    const byte = <u32>load<u8>(at);
    if (byte != MARK) {
      store<u8>(to++, byte);
      continue;
    }
    // another one, or the end, begins with it
    if (at + 1 == end || <u32>load<u8>(at, 1) == MARK) continue;
    const code = <u32>load<u8>(++at);
    if (code == 0) store<u8>(to++, byte);
    else {
      if ((code & 7) != (parts & 7)) return 0;
      store<u32>(ends + ((parts++) << 2), <u32>(to - from));
    }
  }
  store<u32>(ends + (parts << 2), <u32>(to - from));
  return parts + 1;
}

/** Where the scan is read on, the bits that come next, from the highest on, and how many of them there are. */
let nextData: usize = 0;
let nextBits: u64 = 0;
let nextCount: u32 = 0;
/** The part between restart markers, and how many MCUs are left of it. */
let nextPart: u32 = 0;
let nextLeft: u32 = 0;

/** Begins a job of `findRow`. */
export function beginRows(job: usize): void {
  nextData = <usize>load<u32>(job);
  nextBits = 0;
  nextCount = 0;
  nextPart = 0;
  nextLeft = load<u32>(job, 28);
}

/** Whether all parts were read. */
export function endRows(job: usize): i32 {
  return nextPart + 1 == load<u32>(job, 8) ? 0 : MORE_DATA;
}

/**
 * Goes through the blocks of the next row of MCUs of a sequential scan, and stores of luminance DC (i16), and where its
 * AC begins (u32, in bits) and how long it is (u16). The job: data, ends, parts, MCUs across and down, columns and rows
 * of blocks that the picture has, restart interval or 0, members, DC, starts, lengths; of each member its blocks across
 * and down, whether it is luminance, its codes of DC, of AC, the strides of AC, 0, 0. Returns what is wrong.
 * @param y which row that is
 */
export function findRow(job: usize, y: u32): i32 {
  const data = <usize>load<u32>(job);
  const ends = <usize>load<u32>(job, 4);
  const parts = load<u32>(job, 8);
  const across = load<u32>(job, 12);
  const columns = load<u32>(job, 20);
  const rows = load<u32>(job, 24);
  const interval = load<u32>(job, 28);
  const members = load<u32>(job, 32);
  const dcs = <usize>load<u32>(job, 36);
  const starts = <usize>load<u32>(job, 40);
  const lengths = <usize>load<u32>(job, 44);
  const first = job + 48;
  const behind = first + (members << 5);
  let next = nextData;
  let bits = nextBits;
  let have = nextCount;
  let part = nextPart;
  let left = nextLeft;
  let end = load<u32>(ends + (part << 2)) << 3;
  for (let x: u32 = 0; x < across; x++) {
    if (interval != 0) {
      if (left == 0) {
        if (part + 1 >= parts) return NO_RESTART;
        next = data + <usize>load<u32>(ends + (part << 2));
        end = load<u32>(ends + (++part << 2)) << 3;
        bits = 0;
        have = 0;
        left = interval;
        for (let member = first; member < behind; member += 32) store<i32>(member, 0, 24);
      }
      left--;
    }
    for (let member = first; member < behind; member += 32) {
      const wide = load<u32>(member);
      const high = load<u32>(member, 4);
      const seen = load<u32>(member, 8) != 0;
      const dcCodes = <usize>load<u32>(member, 12);
      const acCodes = <usize>load<u32>(member, 16);
      const strides = <usize>load<u32>(member, 20);
      for (let v: u32 = 0; v < high; v++)
        for (let h: u32 = 0; h < wide; h++) {
          if (have < 32) {
            bits |= (<u64>bswap<u32>(load<u32>(next))) << (32 - have);
            next += 4;
            have += 32;
          }
          const ofDc = <u32>load<u16>(dcCodes + (<usize>(bits >> 48) << 1));
          if (ofDc == 0) return NO_CODE;
          bits <<= ofDc >> 8;
          have -= ofDc >> 8;
          const size = ofDc & 15;
          if (size > 0) {
            const value = <i32>(bits >> (64 - size));
            bits <<= size;
            have -= size;
            const negative = value < 1 << (size - 1);
            store<i32>(member, load<i32>(member, 24) + (negative ? value - (1 << size) + 1 : value), 24);
          }
          const start = (<u32>(next - data) << 3) - have;
          for (let k: u32 = 1; k < BLOCK; ) {
            if (have < 32) {
              bits |= (<u64>bswap<u32>(load<u32>(next))) << (32 - have);
              next += 4;
              have += 32;
            }
            const stride = <u32>load<u16>(strides + (<usize>(bits >> 52) << 1));
            // one that goes beyond the block, or ends a block that is full, goes into the next
            if (stride > 0 && k + (stride >> 5) + (stride & 1) <= BLOCK) {
              bits <<= (stride >> 1) & 15;
              have -= (stride >> 1) & 15;
              k += stride >> 5;
              if ((stride & 1) != 0) break;
              continue;
            }
            const code = <u32>load<u16>(acCodes + (<usize>(bits >> 48) << 1));
            if (code == 0) return NO_CODE;
            const taken = (code >> 8) + (code & 15);
            bits <<= taken;
            have -= taken;
            k += ((code >> 4) & 15) + 1;
            if ((code & 15) == 0) {
              if ((code & 0xff) != 0xf0) break;
            } else if (k > BLOCK) return TOO_MANY;
          }
          const at = (<u32>(next - data) << 3) - have;
          if (at > end) return BREAKS_OFF;
          const column = x * wide + h;
          const row = y * high + v;
          if (!seen || column >= columns || row >= rows) continue;
          const place = <usize>(row * columns + column);
          store<i16>(dcs + (place << 1), <i16>load<i32>(member, 24));
          store<u32>(starts + (place << 2), start);
          store<u16>(lengths + (place << 1), <u16>(at - start));
        }
    }
  }
  nextData = next;
  nextBits = bits;
  nextCount = have;
  nextPart = part;
  nextLeft = left;
  return 0;
}

let out: usize = 0;
/** Bits that wait, the last one lowest, and how many. */
let waiting: u64 = 0;
let count: u32 = 0;
/** DC of the block before. */
let before: i32 = 0;

/** Up to 32 bits; fewer than 32 wait. */
// @ts-ignore: decorator
@inline
function put(value: u32, size: u32): void {
  waiting = (waiting << size) | value;
  count += size;
  if (count < 32) return;
  count -= 32;
  const word = <u32>(waiting >> count);
  // none of four bytes is 0xFF unless the highest bit of one that has it is lost when 1 is added
  if ((word & ~(word + 0x01010101) & 0x80808080) == 0) {
    store<u32>(out, bswap<u32>(word));
    out += 4;
  } else for (let shift = 24; shift >= 0; shift -= 8) putByte((word >> shift) & 0xff);
}

function putByte(byte: u32): void {
  store<u8>(out++, byte);
  if (byte == MARK) store<u8>(out++, 0);
}

/** Begins a job of `writeBlocks`. @param to where it is written */
export function beginWriting(to: usize): void {
  out = to;
  waiting = 0;
  count = 0;
  before = 0;
}

/**
 * Writes blocks, as they stand in a file, from one on and up to another. The job: DC (i16), starts, lengths, the bits that
 * those speak of, codes of DC by size (u32: code and length x 65536), bits of zero behind every block.
 */
export function writeBlocks(job: usize, from: u32, to: u32): void {
  const dcs = <usize>load<u32>(job);
  const starts = <usize>load<u32>(job, 4);
  const lengths = <usize>load<u32>(job, 8);
  const data = <usize>load<u32>(job, 12);
  const codes = <usize>load<u32>(job, 16);
  const zeros = load<u32>(job, 20);
  for (let place = <usize>from; place < <usize>to; place++) {
    const dc = <i32>load<i16>(dcs + (place << 1));
    const difference = dc - before;
    before = dc;
    const size = 32 - <u32>clz<i32>(difference < 0 ? -difference : difference);
    const code = load<u32>(codes + (<usize>size << 2));
    put(code & 0xffff, code >> 16);
    // negative numbers are written less one (T.81, section F.1.2.1)
    put(<u32>(difference < 0 ? difference + (1 << size) - 1 : difference), size);
    let at = load<u32>(starts + (place << 2));
    let many = <u32>load<u16>(lengths + (place << 1));
    for (; many >= 32; at += 32, many -= 32) put(look(data, at), 32);
    if (many > 0) put(look(data, at) >> (32 - many), many);
    put(0, zeros);
  }
}

/** Fills the last byte with ones. Returns the end of what was written. */
export function endWriting(): usize {
  const open = count & 7;
  if (open > 0) put((1 << (8 - open)) - 1, 8 - open);
  for (; count > 0; ) {
    count -= 8;
    putByte(<u32>(waiting >> count) & 0xff);
  }
  return out;
}

/** 32 bits, from any on. */
// @ts-ignore: decorator
@inline
function look(data: usize, at: u32): u32 {
  return <u32>((bswap<u64>(load<u64>(data + (at >> 3))) << (at & 7)) >> 32);
}
