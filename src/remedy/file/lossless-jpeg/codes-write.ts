import type { CodeList } from './codes-read';

/** The longest code that a JPEG may have, in bits. */
const LONGEST = 16;
const SYMBOLS = 256;

/** A Huffman table to write by. */
export interface Coder extends CodeList {
  /** By symbol. */
  code: Uint16Array;
  /** Bits of the code; 0: the symbol has none. */
  length: Uint8Array;
}

/**
 * The codes that make the data shortest (T.81, section K.2).
 * @param frequencies how often each of 256 symbols comes; at least one does
 */
export function shortestCodes(frequencies: Uint32Array): Coder {
  const depths = depthsOf(frequencies);
  const counts = countsOf(depths);
  const used = Uint8Array.from(frequencies.keys()).filter(symbol => frequencies[symbol] > 0);
  const symbols = used.sort((x, y) => depths[x] - depths[y] || x - y);
  const code = new Uint16Array(SYMBOLS);
  const length = new Uint8Array(SYMBOLS);
  let at = 0;
  let next = 0;
  for (let bits = 1; bits <= LONGEST; bits++, next <<= 1)
    for (let i = 0; i < counts[bits - 1]; i++) {
      code[symbols[at]] = next++;
      length[symbols[at++]] = bits;
    }
  return { code, length, counts, symbols };
}

/** How many bits symbols and the numbers behind them come to. */
export const bitsFor = ({ length }: Coder, frequencies: Uint32Array): number =>
  frequencies.reduce((sum, many, symbol) => sum + many * (length[symbol] + (symbol & 15)), 0);

/** Stands for the code of all ones, which no symbol may have. */
const RESERVED = SYMBOLS;

/** How deep in Huffman's tree each symbol lies, the reserved one deepest. */
function depthsOf(frequencies: Uint32Array): Uint8Array {
  const depths = new Uint8Array(SYMBOLS + 1);
  const groups = [{ weight: 0, members: [RESERVED] }];
  frequencies.forEach((weight, symbol) => {
    if (weight > 0) groups.push({ weight, members: [symbol] });
  });
  while (groups.length > 1) {
    groups.sort((x, y) => y.weight - x.weight);
    const [light, lighter] = [groups.pop()!, groups.pop()!];
    const members = [...light.members, ...lighter.members];
    for (const member of members) depths[member]++;
    groups.push({ weight: light.weight + lighter.weight, members });
  }
  return depths;
}

/** How many codes there are of 1 to 16 bits, once those that are too long have been taken in (T.81, figure K.3). */
function countsOf(depths: Uint8Array): Uint8Array {
  const counts = new Uint16Array(SYMBOLS);
  for (const depth of depths) if (depth > 0) counts[depth]++;
  for (let bits = counts.length - 1; bits > LONGEST; bits--)
    while (counts[bits] > 0) {
      let shorter = bits - 2;
      while (counts[shorter] === 0) shorter--;
      counts[bits] -= 2;
      counts[bits - 1]++;
      counts[shorter + 1] += 2;
      counts[shorter]--;
    }
  let longest = LONGEST;
  while (counts[longest] === 0) longest--;
  counts[longest]--;
  return Uint8Array.from(counts.subarray(1, LONGEST + 1));
}
