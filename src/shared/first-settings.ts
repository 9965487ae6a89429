// no-unit-test: types only
import type { LightId, PaperId, ProcessId } from './target';

interface Choice<Id> {
  id: Id;
  name: string;
  /** One plain sentence. */
  detail: string;
}

export interface FirstChoices {
  /** Each with the papers that it is printed on, its usual one first. */
  processes: (Choice<ProcessId> & { papers: Choice<PaperId>[] })[];
  lights: Choice<LightId>[];
}

/** What a person said of the book. */
export interface FirstAnswers {
  /** Who prints it, in the person's own words; empty: not said. */
  house: string;
  /** Null: not known yet. */
  process: ProcessId | null;
  /** Null where the process is. */
  paper: PaperId | null;
  light: LightId;
}

/** What was found in a folder that is to be a book; paths relative to it, sorted. */
export interface BookFolder {
  pictures: string[];
  /** Of the pictures, those that layouts place, in their order. */
  placed: string[];
  /** What settings call the layouts, so that these place just those pictures; empty: left to themselves they do. */
  layouts: string[];
  /** Of the pictures, those that an earlier check knows: of one bit, in colour, with a tone of its own. */
  known: { line: string[]; colour: string[]; toned: string[] };
}
