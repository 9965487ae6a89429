// no-unit-test: types only
import type { AB, Basis } from '../shared/forecast';
import type { GreyEncoding, PaperId, ProcessId } from '../shared/target';
import type { InkTableId } from './data';
import type { InkScatter } from './inks/drift';
import type { Paper } from './papers';
import type { DyeSetId } from './spectral/dyes';

/** A printing process as data. Every process is such a file; the few kinds of model are code. */
export interface Process {
  id: ProcessId;
  name: string;
  /** The name as a sentence uses it: `on coated offset`. */
  inSentence: string;
  /** What the press takes in the end: ink values, or R, G, B. */
  signal: 'inks' | 'rgb';
  basis: Extract<Basis, 'generic' | 'data'>;
  /** The paper taken for granted. */
  paper: PaperId;
  /** Surfaces of the papers that it is printed on at all. */
  surfaces: readonly Paper['surface'][];
  model: InkProcess | DyeProcess;
  /** Total ink in percent; null where inks are not counted. */
  inkLimit: number | null;
  /** Tone values (percent) that the process can hold between paper and solid. */
  usable: readonly [number, number];
  /** Typical addressability and screen, in words. */
  screen: string;
  /** What the figures rest on. */
  sources: readonly string[];
  /** Encodings that the measurements speak of; absent: all, where `basis` is `data`. */
  measuredFor?: readonly GreyEncoding[];
  /** What is a guess. */
  guesses: readonly (string | BlackGuess)[];
}

/** A guess of how dark the darkest black is: none any more where that was read from prints. */
export interface BlackGuess {
  ofBlack: string;
}

/** Characterised inks: which table on which paper, and how the press scatters. */
export interface InkProcess {
  kind: 'inks';
  /** Table for every paper that `byPaper` does not name. */
  table: InkTableId;
  byPaper?: Partial<Record<PaperId, InkTableId>>;
  /** A measured departure from the table along the tone scale of coloured greys. */
  offset?: 'liquid-toner';
  /** L* of the darkest four-ink black where it is known to differ from the table's. */
  darkest?: number;
  /** The same on papers of a surface where that is known to be another. */
  darkestOn?: Partial<Record<Paper['surface'], number>>;
  scatter: InkScatter;
}

/** Dyes by Beer-Lambert. */
export interface DyeProcess {
  kind: 'dyes';
  /** Whose densities by wavelength. */
  dyes: DyeSetId;
  /** True where they are another process's, for want of its own: less sure under other lights. */
  borrowed: boolean;
  /** L* of the darkest black (R = G = B = 0). */
  black: number;
  /** Light that the surface throws back before it meets a dye, a share of the perfect diffuser's, 0-1. */
  flare: number;
  /** Density of each dye layer, one SD. */
  density: { order: number; page: number };
  /** Further spread of a process for which no dye data exist, CIELAB at mid-tone. */
  unknownDyes: AB;
}
