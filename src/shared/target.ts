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
}
