// no-unit-test: single.test.ts and index.test.ts read pixels through it, at every address
type Numbers = Uint8Array | Uint16Array;

/** The machine's own order of bytes. */
const LITTLE = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;

/** Whether pixels of three bytes lie so that four of them can be read as three words: RGBR GBRG BRGB, the first lowest. */
export const standInFours = (data: Numbers, step: number): boolean =>
  data instanceof Uint8Array && step === 3 && LITTLE && data.byteOffset % 4 === 0;

/** These words. @param pixels a multiple of 4 */
export const wordsOf = (data: Numbers, pixels: number): Uint32Array =>
  new Uint32Array(data.buffer, data.byteOffset, (pixels >> 2) * 3);
