// no-unit-test: types only
import type { Spared } from './conversion';
import type { Facing } from './facing';
import type { Summary } from './finding';
import type { FirstAnswers, FirstChoices } from './first-settings';
import type { Glance, LayoutText, OpenText, Place, PlaceEdit, RelinkEdit } from './layout-places';
import type { Detail, Marks, PixelReading, SeenBox } from './look';
import type { Contact, Doing, Overview, PictureKey } from './overview';
import type { Encoding } from './picture';
import type { Raster } from './reader-protocol';
import type { BeforeAndAfter, Made, MethodPictures, Remedies } from './remedies';
import type { Review, ReviewedPicture, ReviewWish } from './review';
import type { Sheet, ShownFinding } from './sheet';
import type { LightId } from './target';

/**
 * Messages between the editor and the checker: a process of its own that reads books, judges them and forecasts, so
 * that the editor's extension host, which all extensions share, never waits. It alone starts readers.
 */
export interface CheckerAnswers {
  check: { request: { root: string; open: OpenText[] }; answer: CheckAnswer };
  /**
   * The pictures that a layout places by the text that the editor has open, as far as the last check knows them.
   * `changed`: the layouts of the book place other pictures now, or at other sizes, so that it should be checked again.
   */
  places: { request: { root: string } & OpenText; answer: { places: Place[]; changed: boolean } };
  /** A picture of the book in brief; `picture`: relative to the root. */
  glance: { request: { root: string; picture: string }; answer: Glance };
  sheet: { request: SheetWish; answer: Sheet };
  raster: { request: { file: string; page: number; longEdge: number }; answer: Raster };
  /** What a person who looks closely at a page of a picture wants to see; see `Looker`. */
  detail: { request: PageOf & { box: SeenBox; longEdge: number }; answer: Detail };
  pixel: { request: PageOf & { x: number; y: number }; answer: PixelReading };
  marks: { request: PageOf & { longEdge: number }; answer: Marks };
  /** The pictures on the same spread of its book, itself among them; none where there is no other. */
  facing: { request: SheetWish; answer: Facing };
  /** What can be made of a picture or the pictures of a folder. Nothing is decoded. */
  remedies: { request: { file: string; root: string | null }; answer: Remedies };
  /** What a conversion would make of a picture; nothing is written. */
  candidate: { request: SheetWish & Made & { longEdge: number }; answer: BeforeAndAfter };
  /** A picture made grey in every way; nothing is written. */
  methods: { request: { file: string; longEdge: number }; answer: MethodPictures };
  /**
   * Which of the named pictures and folders can be converted, why the others cannot, and which of those that can nobody
   * may have meant. Paths absolute. `coloured`: any of them has, or may have, colour to be turned into grey.
   */
  convertible: {
    request: { root: string | null; paths: string[] };
    answer: { paths: string[]; left: LeftAlone[]; unmeant: Unmeant[]; coloured: boolean };
  };
  /** Writes pictures: only ever asked because a person ran a command. Paths absolute. */
  convert: { request: ConvertWish; answer: ConvertAnswer };
  /** Remembers which lines the editor made to place results, so that they can be taken back. Paths relative to `root`. */
  relinked: { request: { root: string; lines: RelinkEdit[] }; answer: null };
  /**
   * What has to say otherwise once files or folders have other names, asked before they do, in files as they are called
   * then; `left`: what stays as it is. Paths relative to `root`; `open` as of `convert`.
   */
  renaming: {
    request: { root: string; names: { from: string; to: string }[]; open: OpenText[] };
    answer: { edits: PlaceEdit[]; left: LeftAlone[] };
  };
  /**
   * Paths absolute; `open` as of `convert`; `lines`: layouts are to place the pictures again whose results they were made
   * to place, else only what was converted in place is undone.
   */
  undo: { request: { paths: string[]; open: OpenText[]; lines: boolean }; answer: UndoAnswer };
  /** What layouts have to be made to say so that they place no result (absolute) any more, but what it was made of. */
  unplace: {
    request: { root: string; results: string[]; open: OpenText[] };
    answer: NonNullable<UndoAnswer['relinking']>;
  };
  /**
   * Takes results (absolute) away that still are what was written and that no layout places, neither as it is stored nor
   * as it is open.
   */
  unmake: {
    request: { root: string; results: string[]; open: OpenText[] };
    answer: { removed: string[]; left: LeftAlone[] };
  };
  /** The book on one screen, as it was last checked; null where its settings cannot be used. */
  overview: { request: { root: string }; answer: Overview | null };
  /** What is drawn of some of its pictures; `have`: its small picture is there already. */
  contacts: {
    request: { root: string; pictures: (PictureKey & { have: boolean })[] };
    answer: (PictureKey & Contact)[];
  };
  /** Writes the book as one page for a browser. `file`: absolute; `replace`: the person said so of what is there. */
  bookPage: { request: { root: string; file: string; replace: boolean }; answer: null };
  /**
   * What changed in a book since the last commit, or since its branch parted from `branch` (null: the main one), and one
   * picture of it; `fresh`: the folder may have changed since it was last asked.
   */
  review: {
    request: { root: string; branch: string | null; fresh: boolean } & ReviewWish;
    answer: { review: Review; picture: ReviewedPicture | null };
  };
  /** A picture as a commit holds it; `path`: relative to the root, as it was called then. */
  before: {
    request: { root: string; commit: string; path: string; page: number; longEdge: number };
    answer: Raster;
  };
  /** What may be chosen for the first settings of a book. */
  firstChoices: { request: object; answer: FirstChoices };
  /**
   * The folders in a folder (absolute) that first settings may be for, and how many pictures lie in each; '': itself; none
   * where all that has pictures has settings.
   */
  bookFolders: { request: { root: string }; answer: { path: string; pictures: number }[] };
  /** Writes the first settings of a book. False: there are some already, which stay as they are. `root`: absolute. */
  writeFirst: { request: { root: string; answers: FirstAnswers }; answer: boolean };
  /** Draws the demo book. `folder`: absolute, new or empty. */
  demo: { request: { folder: string }; answer: null };
  /**
   * What has to be written into the file of waivers so that the findings of a rule on a picture are waived. `text`: the
   * file as the editor has it; null: there is none.
   */
  waive: { request: WaiveWish; answer: { offset: number; length: number; content: string }[] };
  /** What has to be written into the settings so that they list a picture as meant so. `text`: as the editor has them. */
  listMeant: {
    request: { picture: string; meant: 'toned' | 'colour'; text: string };
    answer: { offset: number; length: number; content: string }[];
  };
  rules: { request: object; answer: { id: string; description: string }[] };
  /** A rule's page, Markdown. */
  page: { request: { rule: string }; answer: string };
}

/** A page of a file; from 1. */
interface PageOf {
  file: string;
  page: number;
}

export type Question = keyof CheckerAnswers;

export type CheckerRequest =
  | { [Q in Question]: { id: number; question: Q } & CheckerAnswers[Q]['request'] }[Question]
  | { id: number; question: 'cancel' };

export type CheckerMessage =
  | { id: number; progress: Progress }
  | { id: number; ok: true; answer: CheckerAnswers[Question]['answer'] }
  | { id: number; ok: false; message: string; cancelled: boolean };

export interface Progress {
  done: number;
  total: number;
}

/** Of a check the editor is told only what it shows; facts stay with the checker. */
export interface CheckAnswer {
  /** Pictures with findings, by path relative to the root. */
  pictures: { path: string; findings: ShownFinding[] }[];
  /** Every picture of the book, by path. */
  entries: BookEntry[];
  /** `convert`: paths of pictures that a finding asks to be converted. */
  book: (ShownFinding & { convert: string[] })[];
  /** Every layout that was read. */
  layouts: LayoutText[];
  /** Pictures that no layout places, and a sentence of them; null where there are none. */
  unplaced: { paths: string[]; told: string } | null;
  /** Conversions whose original was changed since, by path, and a sentence on each. */
  outdated: { path: string; told: string }[];
  /** Null where the settings could not be used. */
  summary: Summary | null;
  /** How many pictures want attention before the book is ordered; as its one screen counts them. */
  attention: number;
  /** What is wrong in `evengrey.json` or a house file; nothing was read then. */
  settings: LocatedProblem[];
  /** What the settings say in vain, where it stands. */
  slips: LocatedProblem[];
  /** What is wrong in the file of waivers, so that nothing is waived, and what a person should know of what is. */
  waivers: { problems: LocatedProblem[]; notices: string[] };
}

/** A page of a picture in short. */
export interface BookEntry {
  path: string;
  page: number;
  encoding: Encoding;
  doing: Doing;
  /** Of its findings, and of those about the book that ask for it to be changed. */
  rules: string[];
}

/** In a file relative to the book's root, line and column from 1, `length` in characters of that line. */
export interface LocatedProblem {
  file: string;
  line: number;
  column: number;
  length: number;
  message: string;
  /** The word that was probably meant there. */
  suggestion?: string | null;
}

export interface SheetWish {
  file: string;
  page: number;
  /** The book that the picture is in; null: none, forecasts for every process as it comes. */
  root: string | null;
  /** Null: the light of each target. */
  light: LightId | null;
  /** Which ten possible orders are drawn. */
  series: number;
}

export interface WaiveWish {
  root: string;
  /** Relative to the root. */
  picture: string;
  rule: string;
  /** Why the team can live with it. */
  reason: string;
  text: string | null;
}

export interface ConvertWish extends Made {
  paths: string[];
  where: Where;
  /** Pictures stay as they are of which nobody said that they are to be grey, also those named by themselves. */
  spares: boolean;
  /** Of layouts that may have to place the results, and of the settings that may name them. */
  open: OpenText[];
}

/** Where results go. `relink`: the editor is to have the layouts of the book place them from then on. `folder`: absolute. */
export type Where =
  | { kind: 'beside'; relink: boolean }
  | { kind: 'folder'; folder: string }
  | { kind: 'in-place' };

/** A picture that was left as it is, and why. */
export interface LeftAlone {
  path: string;
  reason: string;
}

/**
 * A picture among several that were chosen, of which nobody said that it is to be grey.
 * - `colour`: it is in colour, as far as anybody said
 * - `tone`: it has a strong tone, or one that the settings name, which stays where a tone is made of it
 * - `line`: it is stored in one bit, as line art is
 */
export interface Unmeant extends Spared {
  /** Absolute; `path`: as it is called in its book. */
  file: string;
}

export interface ConvertAnswer {
  /** In the order of the pictures. `output`: absolute. `proof`: how it was found to be when it was read again, in words. */
  converted: { path: string; output: string; proof: string }[];
  skipped: LeftAlone[];
  failed: LeftAlone[];
  /**
   * What layouts have to be made to say so that they place the results, and the settings with them; lines that stay as
   * they are; and how many results layouts place already. Null where that was not asked for.
   */
  relinking: { edits: RelinkEdit[]; left: LeftAlone[]; placedBefore: number } | null;
  /** Pictures whose strong tone is gone, though it may be meant. */
  untoned: string[];
  /** Pictures whose faint tone is gone, taken for what was left over. */
  faint: string[];
  /** Pictures that are among those skipped since nobody said that they are to be grey. */
  spared: Spared[];
  /** What was left out of the folders that were named, and why. */
  notices: string[];
  /** Why nothing more was begun, such as a full disk; null where the work came to its end. */
  stopped: string | null;
  /** All of it as a text for people. */
  report: string;
}

export interface UndoAnswer {
  /** Paths whose originals are back. */
  restored: string[];
  skipped: LeftAlone[];
  failed: LeftAlone[];
  /** What layouts and settings have to be made to say so that they place the originals again; null: none was relinked. */
  relinking: { edits: PlaceEdit[]; left: LeftAlone[] } | null;
  stopped: string | null;
  report: string;
}
