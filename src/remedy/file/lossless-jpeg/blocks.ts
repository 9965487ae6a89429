// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import type { Bits } from './bits-read';
import type { Codes } from './codes-read';
import { RUN } from './tokens';
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** What a scan tells of a component's blocks (T.81, section B.2.3). */
export interface Band {
  /** First and last coefficient. */
  from: number;
  to: number;
  /** Bits that are still to come below these, and whether earlier ones came before. */
  low: number;
  refines: boolean;
}

/** A component within a scan. */
export interface Coding {
  dc: Codes | undefined;
  ac: Codes | undefined;
  /** DC of the block before. */
  before: number;
  /** So many blocks more hold nothing new in this band. */
  ended: number;
}

/** Reads one block into the coefficients from `at` on. */
export type ReadBlock = (coefficients: Int16Array, at: number, coding: Coding) => void;

/** @throws Unusual where there are none */
export const given = (codes: Codes | undefined): Codes => {
  if (!codes) throw new Unusual('a table of codes is missing');
  return codes;
};

/** @throws Unusual where it is none of a sequential scan */
export function checkSequential({ from, to, low, refines }: Band): void {
  if (from !== 0 || to !== BLOCK - 1 || low !== 0 || refines) throw new Unusual('damaged');
}

/** The way to read a block of a progressive scan. @throws Unusual where there is no such scan */
export function blockReader(bits: Bits, band: Band): ReadBlock {
  const { from, to, refines } = band;
  if (from === 0 ? to !== 0 : to < from || to >= BLOCK) throw new Unusual('damaged');
  if (band.low > 13) throw new Unusual('damaged');
  if (from === 0) return refines ? dcRefined(bits, band) : dcFirst(bits, band);
  return refines ? acRefined(bits, band) : acFirst(bits, band);
}

/** T.81, section F.2.2.1. */
function nextDc(bits: Bits, coding: Coding): number {
  coding.before += bits.signed(bits.symbol(given(coding.dc)) & 15);
  return coding.before;
}

/** T.81, section G.1.2.1. */
const dcFirst =
  (bits: Bits, { low }: Band): ReadBlock =>
  (coefficients, at, coding) => {
    coefficients[at] = nextDc(bits, coding) << low;
  };

const dcRefined =
  (bits: Bits, { low }: Band): ReadBlock =>
  (coefficients, at) => {
    if (bits.take(1)) coefficients[at] |= 1 << low;
  };

/** How many blocks hold nothing more, this one included, from the code that says so. */
const endsHere = (bits: Bits, run: number): number => (1 << run) + bits.take(run);

/** @param read gives how many blocks behind this one hold nothing new; `rest` is for those */
const withRuns =
  (
    read: (...block: Parameters<ReadBlock>) => number,
    rest: (coefficients: Int16Array, at: number) => void,
  ): ReadBlock =>
  (coefficients, at, coding) => {
    if (coding.ended === 0) coding.ended = read(coefficients, at, coding);
    else {
      coding.ended--;
      rest(coefficients, at);
    }
  };

const nothing = () => {};

/** T.81, section G.1.2.2. */
function acFirst(bits: Bits, { from, to, low }: Band): ReadBlock {
  return withRuns((coefficients, at, coding) => {
    const codes = given(coding.ac);
    for (let k = from; k <= to; k++) {
      const symbol = bits.symbol(codes);
      const [run, size] = [symbol >> 4, symbol & 15];
      if (size === 0) {
        if (run < 15) return endsHere(bits, run) - 1;
        k += RUN - 1;
        continue;
      }
      k += run;
      if (k > to) throw new Unusual('more coefficients than a block has');
      coefficients[at + k] = bits.signed(size) << low;
    }
    return 0;
  }, nothing);
}

/** T.81, section G.1.2.3: the zeros of a run are those that were zero before; all others get their next bit. */
function acRefined(bits: Bits, { from, to, low }: Band): ReadBlock {
  const one = 1 << low;
  const refine = (coefficients: Int16Array, at: number) => {
    if (bits.take(1) && (coefficients[at] & one) === 0) coefficients[at] += coefficients[at] < 0 ? -one : one;
  };
  const refineRest = (coefficients: Int16Array, at: number, k: number) => {
    for (; k <= to; k++) if (coefficients[at + k] !== 0) refine(coefficients, at + k);
  };
  return withRuns(
    (coefficients, at, coding) => {
      const codes = given(coding.ac);
      for (let k = from; k <= to; k++) {
        const symbol = bits.symbol(codes);
        const size = symbol & 15;
        let zeros = symbol >> 4;
        if (size === 0 && zeros < 15) {
          const blocks = endsHere(bits, zeros);
          refineRest(coefficients, at, k);
          return blocks - 1;
        }
        if (size > 1) throw new Unusual('damaged');
        const value = size === 0 ? 0 : bits.take(1) ? one : -one;
        for (; k <= to; k++) {
          if (coefficients[at + k] !== 0) refine(coefficients, at + k);
          else if (zeros-- === 0) break;
        }
        if (value !== 0 && k > to) throw new Unusual('more coefficients than a block has');
        if (value !== 0) coefficients[at + k] = value;
      }
      return 0;
    },
    (coefficients, at) => refineRest(coefficients, at, from),
  );
}
