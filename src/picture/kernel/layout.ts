// no-unit-test: test/picture/pass holds the built kernel against a plain reference
// Where everything lies in the kernel's memory. A tile is at most TILE_WIDTH pixels wide and 8 rows high: small
// enough for the processor's cache, whatever the size of the picture. Exported by kernel.ts, so that the caller
// reads the same numbers.

export const TILE_WIDTH: i32 = 8192;
export const ROWS: i32 = 8;

/** Per stored channel: smallest u32, largest u32, sum f64. */
export const LEVELS: usize = 0x10000;
/** Counts (u32) of greys, for pixels taken singly: 256. */
export const GREYS: usize = 0x11000;
/** Sums of each 8 x 8 block of the tile: four u16 (one a channel). */
export const SUMS: usize = 0x12000;
/** Pixels that count in each block of the tile: u8. */
export const COUNTS: usize = SUMS + 1024 * 8;
/** RGB: least and most G of each block of the tile: two u8. */
export const RANGES: usize = COUNTS + 1024;
/** What each block of the tile is: see plain.ts. */
export const KINDS: usize = RANGES + 2048;
/** Working space of one block or one vector. */
export const SCRATCH: usize = KINDS + 1024;
/** One byte a pixel: 0 = left out (fully transparent). */
export const MASK: usize = SCRATCH + 1024;
/** The tile as 8-bit samples, what the counting reads; 64 bytes of slack for reads beyond its end. */
export const TILE: usize = MASK + 8192 * 8;
/** The tile as stored, where that is not 8-bit samples without alpha: at most five channels of 16 bits. */
export const STORED: usize = TILE + 8192 * 8 * 4 + 64;

/** Counts (u32) of pairs of neighbouring greys, left + 256 x right: half the work of counting each. */
export const PAIRS: usize = 0x180000;

/** RGB near neutral: counts by R - G (64, from -32), B - G (64), G (256): u32. */
export const NEAR: usize = 0x200000;
/** RGB farther from neutral: counts by R, G, B in steps of 4 (64 x 64 x 64): u32. */
export const FAR: usize = NEAR + 256 * 64 * 64 * 4;

/** Inks: an open hash table of C, M, Y, K values: key u32, count u32; and room to build the next one in. */
export const MIXES: usize = NEAR;
export const MIX_BITS: u32 = 16;
export const NEXT_MIXES: usize = MIXES + (1 << 16) * 8;

export const END: usize = FAR + 64 * 64 * 64 * 4;
