// no-unit-test: types only
import type { RemedyEncoding } from './remedy';
import type { Sheet, ShownFinding } from './sheet';

/** A text that the editor has open and has not saved; `path` relative to the book's root. */
export interface OpenText {
  path: string;
  text: string;
}

/** A layout of a book; `path` relative to its root. */
export interface LayoutText {
  path: string;
  /** In the order of the text. */
  places: Place[];
}

/** Lines and columns from 0, as the editor counts them: a byte order mark is none of its characters. */
export interface TextRange {
  start: { line: number; column: number };
  end: { line: number; column: number };
}

/** Where a layout names a picture: exactly its path. */
export interface Place extends TextRange {
  /** Relative to the root; null: out of the book's folder, not looked at. */
  picture: string | null;
  /** Whether there is such a file; of one outside nobody looked. */
  isThere: boolean;
  findings: PlacedFinding[];
  /** Pictures of the book (relative to the root) that it could place where its own is missing, and what it says then. */
  instead: { picture: string; to: string }[];
}

export interface PlacedFinding extends ShownFinding {
  /** What to convert the picture to because of it; null where that is no answer. */
  fix: RemedyEncoding | null;
  /** The format that the result has where layouts are to place it, if that is another than the picture's: `PNG`. */
  fixAs: string | null;
  /** It is stored so already: only its format becomes another. */
  formatAlone?: true;
  /** Its path with the extension that its content has, where its name says another format. */
  rename?: string;
  /** It is about a tone or a colour of which nobody said whether it is meant: as what the settings would list it. */
  meant?: 'toned' | 'colour';
}

/** A text of a layout (`file` relative to the root) that is to become another. */
export interface PlaceEdit extends TextRange {
  file: string;
  from: string;
  to: string;
}

/** One that has a line place a result, or name it; paths relative to the root. */
export interface RelinkEdit extends PlaceEdit {
  original: string;
  result: string;
}

/** A picture in brief. */
export interface Glance {
  encoding: Sheet['encoding'];
  /** Null where it cannot be shown. */
  thumbnail: { png: Uint8Array; width: number; height: number } | null;
  /** What to do with it, in a few words, and how many pixels an inch it has; null where nothing is known. */
  verdict: string | null;
  resolution: string | null;
  forecasts: GlanceForecast[];
  /** Targets of the picture that are not among `forecasts`. */
  more: number;
  /** Whether it is a picture of the book, so that something can be foretold. */
  inBook: boolean;
}

export interface GlanceForecast {
  /** Process, paper and light. */
  condition: string;
  /** What it rests on, a guess said so. */
  basis: string;
  /** One sentence. */
  expect: string;
  /** Ten possible orders as a drawing (SVG), and what it shows. */
  drawing: string;
  drawn: string;
}
