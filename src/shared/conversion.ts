// no-unit-test: types only
import type { Encoding } from './picture';
import type { Moved, RemedyEncoding, RemedyFormat, RemedyProof } from './remedy';

/** What became of one picture that was to be converted. */
export interface Conversion {
  /** Relative to the book's root, forward slashes; where it was named by a link, what that leads to. */
  path: string;
  /**
   * `planned`: what a dry run would convert; `copied`: into the folder for the results as it is, or in a dry run what
   * would be, since it is what was asked for already.
   */
  outcome: 'converted' | 'copied' | 'planned' | 'skipped' | 'failed';
  /**
   * Where the result is, would be, or lies from before: relative to the root like `path`, or in the output folder as it
   * was named. Null where there is none.
   */
  output: string | null;
  /** SHA-256 of the picture; empty where it could not be opened. */
  sha256: string;
  from: Encoding;
  to: RemedyEncoding;
  /** Null where nothing is written. */
  format: RemedyFormat | null;
  bits: 8 | 16 | null;
  /** Why it was skipped, or failed and what to do; null where it was converted. */
  reason: string | null;
  /** What the result was found to be when it was read again; null where there is none. */
  proof: RemedyProof | null;
  /** How far the result's lightness was moved on purpose; null where it was not, or nothing was made. */
  moved: Moved | null;
  /** What a person should know: what was assumed, changed or lost. */
  told: string[];
}

/** What became of a picture whose conversion was to be undone. */
export interface Undone {
  path: string;
  /** `lost`: the original is not kept any more, so that nothing can bring it back. */
  outcome: 'restored' | 'planned' | 'skipped' | 'failed' | 'lost';
  /** SHA-256 of the original; null where there is none. */
  sha256: string | null;
  reason: string | null;
}

export interface Spared {
  path: string;
  loses: 'colour' | 'tone' | 'line';
}

export interface ConvertReport {
  dryRun: boolean;
  conversions: Conversion[];
  /** The folder for the results as it was named; null: they have none of their own. */
  folder: string | null;
  /** In place: the folder where originals are kept, relative to the root; else null. */
  originals: string | null;
  /** Pictures whose strong tone is gone, or would be, though it may be meant. */
  untoned: string[];
  /** Pictures whose faint tone is gone, or would be, taken for what was left over. */
  faint: string[];
  /** Pictures that were left since nobody said that they are to be grey, and what of them would go. */
  spared: Spared[];
  /** Colour of this chroma and more was to stay; null: none was. */
  below: number | null;
  /** What was left out, and what a person should look at. */
  notices: string[];
  /** Lines of layouts that place the results now, or would; null where that was not asked for. */
  relinking: Relinked | null;
  /** Why nothing more was begun, such as a full disk; null where the work came to its end. */
  stopped: string | null;
}

/** A line that names another picture now. Paths are relative to the book's root. */
export interface RelinkedLine {
  file: string;
  /** From 1. */
  line: number;
  column: number;
  /** As they stand in the source. */
  from: string;
  to: string;
  picture: string;
}

/** A line that was left as it was, or a whole file (`line` null), and why. */
export interface UnchangedLine {
  file: string;
  line: number | null;
  why: string;
}

export interface Relinked {
  /** Of layouts. */
  changes: RelinkedLine[];
  /** Of `evengrey.json`: what it says of a picture by its name goes with the layouts. */
  settings: RelinkedLine[];
  /** How many of the pictures that are to be placed layouts placed before, so that nothing had to be changed for them. */
  placedBefore: number;
  problems: UnchangedLine[];
}

export interface UndoReport {
  dryRun: boolean;
  undone: Undone[];
  /** Lines of layouts that place the originals again, or would; null where none was ever relinked. */
  relinking: Relinked | null;
  stopped: string | null;
}

/** How tones were fitted to a target, and what tint answers it: the same for every picture of a run. */
export interface Fitting {
  fit: {
    /** The target by its name, or the process. */
    target: string;
    process: string;
    strength: number;
    /** False: nothing was to be fitted. */
    moves: boolean;
    /** L* in the file and in the result, and what prints, by the forecast, as the file is and as the result is. */
    tones: { from: number; to: number; printedAsIs: number; printed: number }[];
    told: string[];
  } | null;
  counterTint: {
    target: string;
    against: 'print' | 'paper';
    strength: number;
    /** The tint of the file. */
    a: number;
    b: number;
    told: string[];
  } | null;
}
