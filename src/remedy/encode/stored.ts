// no-unit-test: types only
/** The numbers that a file is to store, ready to be written. */
export interface Stored {
  width: number;
  height: number;
  space: 'grey' | 'rgb' | 'cmyk';
  bits: 8 | 16;
  /** Interleaved, alpha last; CMYK: 0 = no ink. As many bits as `bits` says. */
  data: Uint8Array | Uint16Array;
  alpha: boolean;
  /** The profile to embed; null: the file carries none. */
  icc: Uint8Array | null;
}
