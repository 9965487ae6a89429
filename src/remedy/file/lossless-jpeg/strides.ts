import { ZEROS } from './tokens';

/** Bits that are looked at together: a table by so many stays next to the processor. */
export const LOOKED_AT = 12;

/**
 * By the next `LOOKED_AT` bits, how far whole symbols of AC, each with its number, go in them: coefficients x 32 + bits
 * x 2 + whether the block ends there. 0 where not even one fits in.
 * @param all codes by 16 bits
 */
export function stridesOf(all: Uint16Array): Uint16Array {
  return Uint16Array.from({ length: 2 ** LOOKED_AT }, (_, bits) => {
    let coefficients = 0;
    let at = 0;
    for (;;) {
      // with zeros for those that are not seen: a code that needs them goes too far
      const code = all[((bits << at) & (2 ** LOOKED_AT - 1)) << (16 - LOOKED_AT)];
      const size = code & 15;
      const next = at + (code >> 8) + size;
      if (code === 0 || next > LOOKED_AT) return (coefficients << 5) | (at << 1);
      at = next;
      if (size === 0 && (code & 0xff) !== ZEROS) return (coefficients << 5) | (at << 1) | 1;
      coefficients += ((code >> 4) & 15) + 1;
    }
  });
}
