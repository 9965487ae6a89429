// no-unit-test: index.test.ts and test/remedy/proof.test.ts go through it
/** A multiple of 4. */
const PIXELS = 2 ** 14;

/**
 * Pixels part by part, each as its first and the one behind its last: what is kept of a part stays near, and a walk that
 * is called again and again is compiled before the picture ends.
 */
export function* parts(pixels: number): Generator<[from: number, to: number]> {
  for (let from = 0; from < pixels; from += PIXELS) yield [from, Math.min(pixels, from + PIXELS)];
}
