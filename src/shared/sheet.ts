// no-unit-test: types only
import type { Severity } from './finding';
import type { Bands, Basis } from './forecast';
import type { Encoding } from './picture';
import type { LightId } from './target';

/** One picture as it is shown: words and colours, nothing left to work out. Colours are sRGB, `#rrggbb`. */
export interface Sheet {
  /** Relative to the book's root; without a book the file's name. */
  path: string;
  page: number;
  /** How many the file has. */
  pages: number;
  /** Pixels as it is seen, and how large it is printed; null where it cannot be read. */
  size: { width: number; height: number; printed: PrintedSize } | null;
  /** Its place in the book; null without one. */
  place: BookPlace | null;
  advice: Advice;
  encoding: { id: Encoding; name: string; meaning: string };
  /** What was read from the file, and how large it is placed: label and value, in words. */
  facts: [label: string, value: string][];
  findings: ShownFinding[];
  /** What holds for every picture of the book, said once. */
  shared: ShownFinding[];
  /** The file's own greys at `lightness`, as a screen shows them. */
  scale: { lightness: number[]; colours: string[] };
  conditions: Condition[];
  /** Every light that can be asked for; `light` is the one asked for, null: each target's own. */
  lights: { id: LightId; name: string }[];
  light: LightId | null;
  /** Which ten possible orders are drawn: 0, 1, 2 ... */
  series: number;
}

/** Pixels on a millimetre of paper, and how that is known: by the settings or a layout, by the file's ppi, or not at all. */
export interface PrintedSize {
  perMm: number;
  from: 'placed' | 'ppi' | 'assumed';
}

/** A picture's neighbours, paths relative to the book's root. */
export interface BookPlace {
  before: string | null;
  after: string | null;
  /** On the same spread, itself left out. */
  beside: string[];
}

export interface ShownFinding {
  rule: string;
  severity: Severity;
  message: string;
}

/**
 * - `send`: nothing in the file stands against it
 * - `convert`: the file itself can be made better
 * - `ask`: only the print house can say
 * - `mend`: the file cannot be used as it is
 * - `leave`: not a picture that is judged
 */
export interface Advice {
  kind: 'send' | 'convert' | 'ask' | 'mend' | 'leave';
  title: string;
  /** The same in a word or two, as a small picture among others carries it: `convert`, `place a PNG of it`. */
  tag: string;
  reason: string;
  /** The layouts can be made to place another file of it, which a conversion writes. */
  places?: true;
}

/** A forecast of the picture under one target, ready to show. */
export interface Condition {
  /** The target's name in the settings; without settings the process. */
  target: string;
  process: string;
  paper: string;
  light: string;
  basis: Basis;
  /** The basis in words, what is a guess said so. */
  basisWords: string;
  /** Ten possible orders, as many of them tinted as the forecast expects of ten. */
  orders: PossibleOrder[];
  /** What to expect, in sentences: how often a tint is seen, where it leans, what prints as black. `direction` is empty where nothing is grey. */
  expect: { tint: string; direction: string; range: string };
  /** In how many of the ten a tint is seen, in words. */
  tinted: Record<keyof PossibleOrder['tint'], string>;
  bands: Bands;
  /** How the picture's tones come out. */
  tones: Tones;
  /** What prints like black: all of the file below this L*, and the share (0-1) of the picture that is so dark. */
  closed: { below: number; share: number };
  /** Percent of ink that may lie on one place, and whether the settings say so; null where none is known or it does not count. */
  inkLimit: { percent: number; stated: boolean } | null;
  /** This picture, stored as it is, in the words of `encodings`. */
  own: Pick<EncodingLine, 'even' | 'black' | 'ground'>;
  /**
   * Numbers for the table, label and value; every condition has the same labels in the same order. A label that begins
   * with a space is a part of the one above.
   */
  figures: [label: string, value: string][];
  /** Where the figures come from. */
  ground: string[];
  /** What every encoding would do here. */
  encodings: EncodingLine[];
}

/** L* of the file and of the print, within the deepest black and the paper of it. A forecast has it too. */
export interface Tones {
  zones: readonly { L: number; Lprint: number }[];
  range: { black: number; white: number };
}

/** A sound grey picture in one encoding under a target, in words. */
export interface EncodingLine {
  encoding: string;
  /** Orders of 10 without a visible tint. */
  even: string;
  /** L* of its darkest black. */
  black: string;
  /** `measured` or `guess`. */
  ground: string;
  /** Whether the picture is stored so; its own figures are `Condition.own`. */
  own: boolean;
}

/** Greys at the sheet's `scale.lightness`, each seen in two ways. */
export interface PossibleOrder {
  /** By itself: eyes that are used to the paper see its own colour as none. */
  alone: string[];
  /** Beside a pure white page: with the paper's own colour. */
  beside: string[];
  /** The same as L*, a*, b* (D50), for drawing more than strips: of `alone` without the paper's own colour. */
  lab: Record<'alone' | 'beside', [L: number, a: number, b: number][]>;
  /** Whether it counts as one in which a tint is seen, each way. */
  tint: { alone: boolean; beside: boolean };
}
