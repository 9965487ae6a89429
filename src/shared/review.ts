// no-unit-test: types only
import type { ChangeKind } from './comparison';
import type { ForecastChange } from './remedies';
import type { ShownFinding } from './sheet';

/** What the folder is compared with: the last commit, or where the branch parted from the main one. */
export type Since = 'commit' | 'branch';

/** What changed in a book, as its page lists it: words, nothing left to work out. */
export interface Review {
  /** What the change does to the book, and whether what changed matches the rest; the second may be empty. */
  headline: string;
  matching: string;
  /** What was compared with what. */
  compared: string;
  /** By path. */
  pictures: ReviewEntry[];
  /** About the book as a whole. */
  book: { new: ShownFinding[]; ended: ShownFinding[] };
  /** Pictures that did not change and are judged otherwise, a line each. */
  others: string[];
  notices: string[];
  /** The commit before, in full; of a folder that was called otherwise, `COMMIT:FOLDER`. */
  commit: string;
}

export interface ReviewEntry {
  path: string;
  kind: ChangeKind;
  /** `renamed from a.tif, between b.tif and c.tif` */
  happened: string;
  verdict: ChangeVerdict;
  /** How many findings. */
  new: number;
  ended: number;
}

/** What a change does to one picture. Notes weigh nothing. */
export interface ChangeVerdict {
  kind: 'worse' | 'better' | 'mixed' | 'same' | 'gone';
  words: string;
}

/** One changed picture before and after. */
export interface ReviewedPicture {
  /** Null where it is not there on that side. */
  before: ReviewedSide | null;
  after: ReviewedSide | null;
  path: string;
  page: number;
  /** Every page that can be asked for. */
  pages: number[];
  happened: string;
  verdict: ChangeVerdict;
  /** How often a tint is seen, and whether it matches the book, in a line each. */
  says: string[];
  facts: ComparedFact[];
  forecasts: ForecastChange[];
  findings: { new: ShownFinding[]; ended: ShownFinding[]; unchanged: ShownFinding[] };
  /** In the order of the book, itself among them; none of a deleted one. */
  neighbours: { path: string; beside: boolean }[];
}

export interface ReviewedSide {
  path: string;
  encoding: string;
}

export interface ComparedFact {
  label: string;
  /** Empty where nothing is known. */
  before: string;
  after: string;
}

export interface ReviewWish {
  since: Since;
  /** One of its pictures; null: the list. `page`: null: its first that changed. */
  picture: { path: string; page: number | null } | null;
}

/** From the editor to the page. */
export type ToReviewPage =
  /** `picture` is null where `wish` asks for none, or for one that did not change. */
  | { type: 'review'; root: string; wish: ReviewWish; review: Review; picture: ReviewedPicture | null }
  /** Nothing can be compared; what to do in words. */
  | { type: 'empty'; words: string }
  | { type: 'busy'; words: string }
  /** A picture, PNG. `of`: `before`, `after`, or the path of a neighbour. */
  | { type: 'raster'; of: string; png: Uint8Array; fullWidth: number; fullHeight: number }
  | { type: 'no-raster'; of: string; message: string };

/** From the page to the editor. `ready` comes once, when the page listens. */
export type FromReviewPage =
  | { type: 'ready' }
  | { type: 'choose'; picture: ReviewWish['picture'] }
  | { type: 'open'; path: string }
  | { type: 'explain'; rule: string }
  | { type: 'again' };
