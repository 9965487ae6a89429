// no-unit-test: types only
import type { Summary } from './finding';
import type { Raster } from './reader-protocol';
import type { Sheet, ShownFinding } from './sheet';
import type { LightId } from './target';

/**
 * Messages between the editor and the checker: a process of its own that reads books, judges them and forecasts, so
 * that the editor's extension host, which all extensions share, never waits. It alone starts readers.
 */
export interface CheckerAnswers {
  check: { request: { root: string }; answer: CheckAnswer };
  sheet: { request: SheetWish; answer: Sheet };
  raster: { request: { file: string; page: number; longEdge: number }; answer: Raster };
  rules: { request: object; answer: { id: string; description: string }[] };
  /** A rule's page, Markdown. */
  page: { request: { rule: string }; answer: string };
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
  book: ShownFinding[];
  /** Null where the settings could not be used. */
  summary: Summary | null;
  /** What is wrong in `evengrey.json` or a house file; nothing was read then. */
  settings: LocatedProblem[];
}

/** In a file relative to the book's root, line and column from 1, `length` in characters of that line. */
export interface LocatedProblem {
  file: string;
  line: number;
  column: number;
  length: number;
  message: string;
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
