// no-unit-test: types only
import type { FactsDone, FactsTask } from './reader-protocol';
import type { Candidate, MethodPictures } from './remedies';
import type { GreyMethod, RemedyResult, RemedyWish, SourceFacts } from './remedy';

/** What a converter is asked: `file` as the wish says, written to `temporary`. */
export interface ConverterTask {
  kind: 'convert';
  file: string;
  temporary: string;
  wish: RemedyWish;
  /** What was read of the picture before; null: it is read anew. */
  known: SourceFacts | null;
}

/** The same without a file, shown with a longest edge of so many pixels. */
export interface CandidateTask {
  kind: 'candidate';
  file: string;
  wish: RemedyWish;
  longEdge: number;
}

/** The picture made grey in several ways, shown small. */
export interface MethodsTask {
  kind: 'methods';
  file: string;
  methods: { id: string; method: GreyMethod }[];
  longEdge: number;
}

/** A converter reads facts as well: what it decoded for them it need not decode again to convert it. */
export type AnyConverterTask = FactsTask | ConverterTask | CandidateTask | MethodsTask;

/** `refused`: why the picture cannot be converted, in plain sentences. */
export type ConverterDone =
  | FactsDone
  | { result: RemedyResult }
  | { candidate: Candidate }
  | { methods: MethodPictures }
  | { refused: string };
