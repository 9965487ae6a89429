// no-unit-test: types only
import type { RemedyResult, RemedyWish, SourceFacts } from './remedy';

/** What a converter is asked: `file` as the wish says, written to `temporary`. */
export interface ConverterTask {
  file: string;
  temporary: string;
  wish: RemedyWish;
  /** What was read of the picture before; null: it is read anew. */
  known: SourceFacts | null;
}

/** `refused`: why the picture cannot be converted, in plain sentences. */
export type ConverterDone = { result: RemedyResult } | { refused: string };
