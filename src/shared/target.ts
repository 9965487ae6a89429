// no-unit-test: types only
import type { Encoding } from './picture';

export type ProcessId =
  | 'silver-halide'
  | 'liquid-toner'
  | 'dry-toner'
  | 'inkjet'
  | 'dye-transfer'
  | 'offset-coated'
  | 'offset-uncoated';

export type LightId =
  | 'D50'
  | 'D65'
  | 'A'
  | 'FL2'
  | 'FL11'
  | 'LED-B1'
  | 'LED-B2'
  | 'LED-B3'
  | 'LED-B4'
  | 'LED-B5';

export type PaperId =
  | 'photo-gloss'
  | 'photo-lustre'
  | 'gloss-coated'
  | 'gloss-coated-bright'
  | 'matt-coated'
  | 'grade-3-coated'
  | 'grade-5-coated'
  | 'uncoated'
  | 'uncoated-bright'
  | 'uncoated-warm';

/** What the print house does with the numbers it is sent. */
export type RouteId = 'rgb' | 'separated' | 'inks' | 'black-plate' | 'unknown';

/** A paper of the user's own: measured white and, if known, how strongly it is brightened. */
export interface MeasuredPaper {
  lab: [number, number, number];
  brightened?: 'none' | 'faint' | 'low' | 'moderate' | 'high';
}

/** Where a book, or a part of it, will be printed. All defaults filled in. */
export interface Target {
  name: string;
  process: ProcessId;
  paper: PaperId | MeasuredPaper;
  light: LightId;
  route: RouteId;
  /** Encodings the print house takes; null where nobody said. */
  encodings: Encoding[] | null;
  /** Total ink limit in percent; null = the process's own. */
  inkLimit: number | null;
  /** Paths relative to the book's root. */
  profile: string | null;
  record: string | null;
  /** What `profile` names, read by `print/profile`; absent or null: the forecast goes by the process alone. */
  pressProfile?: PressProfile | null;
  /** What `record` names, read by `print/record`; absent or null: nothing of this print house's was read yet. */
  printRecord?: PrintRecord | null;
  /**
   * The condition that four-ink separations are made for where it is not this target's own (a wrong separation);
   * absent or null: its own.
   */
  separatedFor?: { process: ProcessId; paper: PaperId | MeasuredPaper } | null;
}

/** Encodings that any grey picture can be turned into; the others are accidents or another intent. */
export type GreyEncoding = Extract<
  Encoding,
  'rgb-neutral' | 'single-channel' | 'black-only' | 'four-channel'
>;

/** What a print house has delivered: readings of its prints, by the encoding in which the patches were sent. */
export interface PrintRecord {
  process: ProcessId;
  /** Measured CIELAB D50 of its paper; null where it was not measured. */
  paper: [number, number, number] | null;
  /** Day of the last reading, YYYY-MM-DD. */
  date: string;
  readings: RecordReading[];
}

export interface RecordReading {
  /** How the patches were stored. */
  encoding: GreyEncoding;
  /** Orders that were read. */
  orders: number;
  /** Mean tint (a*, b* from the grey aim of the paper, D50) by print lightness L*; one entry holds for all. */
  greys: { L: number; a: number; b: number }[];
  /** Residual spread, one SD of a* and b*: from one order to the next (null with one order), and within one. */
  order: { a: number; b: number } | null;
  page: { a: number; b: number } | null;
  /** L* of the darkest black that was read; null where none was. */
  black: number | null;
}

/** An ICC profile of the print house, read and checked. Lives in memory beside the target, never in a report. */
export interface PressProfile {
  /** Hash of its content. */
  readonly id: string;
  readonly description: string;
  /** What it takes: black alone, R, G, B, or C, M, Y, K. */
  readonly space: 'grey' | 'rgb' | 'cmyk';
  /**
   * Absolute colorimetric CIELAB D50 of device values in 0-1 (grey and RGB: 0 = black; inks: 0 = none), written into
   * `out`.
   */
  lab(values: ArrayLike<number>, out: Float64Array): void;
  /**
   * How the profile itself separates neutral greys from paper to black (relative colorimetry): device values one after
   * the other, paper first. Null where it works one way only.
   */
  readonly greys: Float64Array | null;
  /** In a text of the target it stands for its content by `id`. */
  toJSON(): string;
}
