// no-unit-test: types only
import type { Forecast } from './forecast';
import type { Encoding, Intent, PictureFacts } from './picture';
import type { Target } from './target';

export type Severity = 'error' | 'warning' | 'note';

export interface Finding {
  rule: string;
  severity: Severity;
  /** First the consequence in print, then the cause, then the way out. */
  message: string;
  data: Record<string, unknown>;
}

/** The path of a picture in a layout source. */
export interface PlacedAt {
  /** Relative to the root, forward slashes. */
  file: string;
  /** From 1. */
  line: number;
  column: number;
}

/** A line that places a picture which the usual tool of its layout cannot place. */
export interface Refusal extends PlacedAt {
  /** How a sentence begins on what the tool does not take: `browsers show`, before `no TIFF`. */
  tool: string;
  /** What the tool does then. */
  outcome: 'blank' | 'stops';
  /** False where the layout's language has other tools, which may place it. */
  sure: boolean;
}

/** A finding that the team has decided to live with. */
export interface WaivedFinding extends Finding {
  /** Why; '' where nobody said. */
  reason: string;
}

/** A picture in its book: facts plus what the settings and the model say of it. */
export interface BookPicture {
  /** Relative to the root, forward slashes. */
  path: string;
  facts: PictureFacts;
  intent: Intent;
  /** True where the settings, or a conversion's record in the file, say it; false where it was taken for granted. */
  intentStated: boolean;
  /** Name of the part, null for the book's own. */
  part: string | null;
  /** The targets this picture is printed on; none where a converted copy took its place. */
  targets: Target[];
  /** One per target, same order; empty where nothing can be said (colour, unreadable). */
  forecasts: Forecast[];
  /** Printed size in mm where the settings say it, else the largest at which a layout places the picture. */
  placed: { width?: number; height?: number } | null;
  /** The picture that this is a conversion of, by its path, where that was changed since; absent: it was not. */
  changedOriginal?: string;
  /** Where layouts place it, in the order of the book; absent or empty where none does. */
  placedAt?: readonly PlacedAt[];
  /** Those of them that cannot; absent: none. */
  refusals?: readonly Refusal[];
  /**
   * Its place in the order of the book, from 1, the same for all pages of a file; absent or null: neither spreads nor
   * layouts give it one, and it comes after the others by name.
   */
  position?: number | null;
  /** Path of the toned picture whose tone this one is to match, where the settings name one. */
  reference?: string | null;
  /** Path of the converted copy in the book that took its place, so that it is not judged; absent or null: none did. */
  replacedBy?: string | null;
}

export interface PictureReport extends BookPicture {
  findings: Finding[];
  /** Those that are waived: not among the others, and not counted with them. */
  waived?: WaivedFinding[];
}

export interface BookReport {
  /**
   * Set where only some pictures were checked: which, as it ends "what is": `changed since main (...)`, `staged`, `named`;
   * and how many others were not looked at, so that nothing is said that compares; `gone`: pictures that are taken out of
   * the book; `held`: how many pictures of the book lie in what was named, these among them, changed or not; `beyond`:
   * submodules that changed, of which nobody looked at the pictures; `others`: those that the pictures were compared with, by
   * whose contents a finding that names them is known.
   */
  scope?: {
    which: string;
    unread: number;
    gone?: readonly string[];
    held?: number;
    beyond?: readonly string[];
    others?: readonly BookPicture[];
  };
  targets: Target[];
  /** Sorted by path, then page. */
  pictures: PictureReport[];
  /** About the book as a whole. */
  findings: Finding[];
  /** Those that are waived: not among the others, and not counted with them. */
  waived?: WaivedFinding[];
  /** Pictures that face each other, by their paths; absent: nobody named any. */
  spreads?: readonly (readonly string[])[];
  /** So many pictures lie there and were not checked, since layouts place others; absent: none. */
  unplaced?: number;
  /** What was not looked at, and settings that concern nothing: plain sentences, no verdicts. */
  notices: string[];
  /** Those of the notices that stand in a line of the settings, without where; absent: none. */
  slips?: Slip[];
  summary: Summary;
}

/** Words of the settings that say something in vain, where they stand: line and column from 1. */
export interface Slip {
  /** Relative to the root, forward slashes. */
  file: string;
  line: number;
  column: number;
  length: number;
  message: string;
  /** The name that was probably meant there; absent: none. */
  suggestion?: string;
}

export interface Summary {
  pictures: number;
  errors: number;
  warnings: number;
  notes: number;
  /** Findings that do not count; absent: none. */
  waived?: number;
  encodings: Partial<Record<Encoding, number>>;
}
