// no-unit-test: types only
import type { Finding, PictureReport, Slip, WaivedFinding } from './finding';
import type { Encoding } from './picture';
import type { Target } from './target';

/** A book at one of two revisions. */
export interface ComparedRevision {
  /** As it was asked for; null: the current commit, or the folder. */
  asked: string | null;
  /** The commit in full; of the folder, the tree that it would be. */
  commit: string;
  /** What the book's folder was called there, from the top of the repository ('' is that itself), where it is called otherwise now. */
  folderThen?: string;
  /** It is what lies in the book's folder, committed or not. */
  folder: boolean;
  targets: Target[];
  /** How many pictures the book holds there, each file once. */
  pictures: number;
  /** About the book as a whole, as far as it was looked at. */
  findings: Finding[];
  /** By the name of a target what the forecasts of all that was looked at rest on. */
  grounds: Readonly<Record<string, readonly string[]>>;
}

/**
 * - `renamed`: the same content under another name; `moved`: renamed and changed
 * - `mode`: only who may do what with the file
 * - `added`, `deleted`: from the book's point of view, also where the settings let it in or out
 */
export type ChangeKind = 'added' | 'deleted' | 'changed' | 'renamed' | 'moved' | 'mode';

/** Findings of one rule, target, severity and picture beside are one finding, whatever figures its message tells. */
export interface FindingChanges {
  new: Finding[];
  ended: Finding[];
  unchanged: Finding[];
}

/** What became of what is said of a picture. */
export interface PictureFindings extends FindingChanges {
  /** By the first of the unchanged that asks to save as something else than before; absent: none does. */
  advice?: Advised;
}

/** What pictures are to be saved as, before and after. */
export interface Advised {
  /** Null: on all that it is printed on. */
  target: string | null;
  before: string;
  after: string;
}

/** Whether a picture will print like the rest of the book on a target. */
export interface Match {
  target: string | null;
  /**
   * `differs`: by rules. `unknown`: the others were not looked at, or nothing is forecast; with a distance: it is likely to
   * be seen, and no rule speaks of it. `alone`: there are no others to match. `ahead`: no way of storing has the majority, or
   * the majority is to change, and it is stored as all are to be. `along`: it is one of that majority.
   */
  verdict: 'matches' | 'differs' | 'unknown' | 'alone' | 'ahead' | 'along';
  /** Rules that deny the match, or ask for the change. */
  rules: string[];
  /** All of these are waived: the team lives with it. */
  waived: boolean;
  /** Where it differs and most of the others are stored otherwise: as what it is, and as what they are. */
  stored?: { as: Encoding; others: Encoding };
  /** Distance in a*, b* from the middle of the others that are stored alike, at the same lightness; null: not known. */
  distance: number | null;
  /** Probability (0-1) that the distance is seen on facing pages; null where it is not known. */
  probability: number | null;
}

/** One page of a file before and after. */
export interface PageChange {
  /** From 1. */
  page: number;
  before: PictureReport | null;
  after: PictureReport | null;
  /** Whether it is pixel for pixel what it was; null where its figures are others already, or nobody could look. */
  samePixels: boolean | null;
  findings: PictureFindings;
  /** What is said of it now and waived, since this change or before. */
  waived: Finding[];
  /** One a target of the picture as it is now; none of a deleted one. */
  matches: Match[];
}

export interface PictureChange {
  kind: ChangeKind;
  path: string;
  /** Its name before, where it has another. */
  from: string | null;
  /** Renamed, and another picture has the name that it had: they were swapped, or changed names in a ring. */
  swapped: boolean;
  /** Octal, where they differ. */
  modes: { before: string; after: string } | null;
  /** How large its file is; null where that is not known of both, or one of them only points to a file. */
  bytes: { before: number; after: number } | null;
  /** Pictures that stand before and after it in the book, and beside it on its spread; as the book is now. */
  neighbours: { before: string | null; after: string | null; beside: string[] };
  /** On its spread before, by their names now; empty too where it was not there. */
  faced: string[];
  /** Of one that is not in the book any more and whose file is still there: why it is not; else null. */
  still: 'left-out' | 'unplaced' | null;
  /** None where only the mode changed. */
  pages: PageChange[];
}

/** A picture that did not change itself, and is judged otherwise. */
export interface OtherChange {
  path: string;
  page: number;
  findings: PictureFindings;
  /** Rules of what is new because it was waived before, and is not any more; absent: none. */
  lapsed?: string[];
}

/** One thing by which pictures are judged otherwise than before, and which of a book's files say it. */
export interface SettingsClause {
  /** `settings`: evengrey.json and what it takes in; `layouts`: the sources of the layout; `waivers`: their file. */
  of: 'settings' | 'layouts' | 'waivers';
  words: string;
}

/** What the settings do to grey pictures that are the same on both sides. */
export interface SetForecast {
  /** As it is called now. */
  target: string;
  /** Over so many pages. */
  pages: number;
  /** Mean probability (0-1) that a tint is seen, by the settings of either side. */
  before: number;
  after: number;
}

/** Where a picture stands in the book, apart from what it is. */
export interface Stand {
  /** On its spread beside it. */
  facing: string[];
  /** The picture before it in the book; null: it is the first. */
  after: string | null;
  /** The layout source that places it; null: none does, so the book goes by names and spreads. */
  layout: string | null;
}

/** A picture that did not change and stands elsewhere; pictures are called as they are now. */
export interface Rearranged {
  path: string;
  before: Stand;
  after: Stand;
}

/** A finding that the change itself waives. */
export interface NewlyWaived {
  /** Null: about the book. */
  path: string | null;
  page: number;
  finding: WaivedFinding;
}

/** A line of a layout that takes in a text. */
export interface TakenIn {
  file: string;
  /** From 1. */
  line: number;
  /** The text, as the line has it. */
  path: string;
}

export interface SeverityCounts {
  errors: number;
  warnings: number;
  notes: number;
}

export interface Comparison {
  base: ComparedRevision;
  head: ComparedRevision;
  /** There was nothing in the book's folder, and no other folder became it: all is new. */
  isFirst?: boolean;
  /** The base is where the two revisions parted, not the revision that was asked for. */
  mergeBase: boolean;
  /** `book`: what is said of the set holds for all of it. `changes`: the unchanged pictures were not looked at. */
  scope: 'book' | 'changes';
  /** Unchanged pictures (files) that were not looked at. */
  unread: number;
  /** Paths of submodules that changed: their pictures belong to another repository and were not compared. */
  beyond: string[];
  /** By path. */
  changes: PictureChange[];
  others: OtherChange[];
  /** Where what is said of pictures stayed, and asks for something else now: those of the same content, by path. */
  advice: (Advised & { pictures: string[] })[];
  /** What pictures are judged by, where that changed, and what it does; `off`: rules that run no more; `weaker`: that count for less; `stricter`: for more, and ran before. */
  settings: {
    changes: SettingsClause[];
    forecasts: SetForecast[];
    off?: string[];
    weaker?: string[];
    stricter?: string[];
  };
  /** In the order of the book. */
  rearranged: Rearranged[];
  /** What was waived before is none. */
  waived: NewlyWaived[];
  /** About the book as a whole; what stayed, also of several pictures by name. */
  book: FindingChanges;
  notices: string[];
  /** What is not looked at any more and may print all the same, as the notices tell it; absent: nothing. */
  unlooked?: {
    /** Pictures that were looked at, are still there, and are left out by settings or an ignore file. */
    pictures: string[];
    /** Pictures that are placed since and left out so. */
    never: string[];
    /** Lines of layouts that take in what is not there. */
    texts: TakenIn[];
  };
  /** Those of the notices that tell what the settings say in vain since, without where; absent: none. */
  slips?: Slip[];
  summary: {
    changes: Record<ChangeKind, number>;
    new: SeverityCounts;
    ended: SeverityCounts;
    unchanged: SeverityCounts;
    /** What a check of the base counts, as far as it was looked at: not always what ended and stayed. */
    base: SeverityCounts;
    /** Findings of the base of which the settings changed the severity alone: they are as before, and neither new nor ended. */
    regraded: number;
  };
}
