import { stridesOf } from './strides';
import { MOST_AC } from './tokens';
import { Unusual } from './unusual';

const LENGTHS = 16;

/** A Huffman table as a DHT segment lists it: how many codes of each length, and their symbols, shortest first. */
export interface CodeList {
  counts: Uint8Array;
  symbols: Uint8Array;
}

/** The same to read by. Codes are length x 256 + symbol; 0 where there is no such code. */
export interface Codes extends CodeList {
  /** By the next 16 bits. */
  all: Uint16Array;
  /** Of AC: see there. */
  strides: Uint16Array;
}

/** Huffman tables by class (0 DC, 1 AC) and place, as a DHT segment defines them; a later one takes the place. */
export type CodeTables = Map<number, Codes>;

export const dcKey = (place: number): number => place;
export const acKey = (place: number): number => 16 + place;

/** Takes in a DHT segment (T.81, section B.2.4.2). @throws Unusual where it is damaged */
export function takeCodes(tables: CodeTables, body: Uint8Array): void {
  for (let at = 0; at < body.length; ) {
    const key = body[at];
    const counts = body.subarray(at + 1, at + 1 + LENGTHS);
    const total = counts.reduce((sum, count) => sum + count, 0);
    const symbols = body.subarray(at + 1 + LENGTHS, at + 1 + LENGTHS + total);
    if (counts.length < LENGTHS || symbols.length < total || (key & 15) > 3 || key > 0x13)
      throw new Unusual('a damaged table of codes');
    tables.set(key, codesOf(counts, symbols, key >= acKey(0) ? MOST_AC : 15));
    at += 1 + LENGTHS + total;
  }
}

/**
 * Every 16 bits that begin with a code say it (T.81, annex C).
 * @param most bits that a number may have, as the low half of a symbol says; what says more is no symbol
 */
function codesOf(counts: Uint8Array, symbols: Uint8Array, most: number): Codes {
  const all = new Uint16Array(2 ** LENGTHS);
  let code = 0;
  let symbol = 0;
  for (let length = 1; length <= LENGTHS; length++) {
    const spread = 2 ** (LENGTHS - length);
    for (let i = 0; i < counts[length - 1]; i++, code += spread) {
      if (code + spread > all.length) throw new Unusual('a damaged table of codes');
      const meant = symbols[symbol++];
      if ((meant & 15) <= most) all.fill(length * 256 + meant, code, code + spread);
    }
  }
  return { counts, symbols, all, strides: stridesOf(all) };
}
