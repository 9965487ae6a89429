// no-unit-test: types only; the tests of every format read troubles
/** What was to be done with a book. */
export type Done = 'checked' | 'compared';

/** Why nothing was checked, or not all that was asked for. */
export interface Trouble {
  /** Plain sentences. */
  message: string;
  /** Where it stands, `file` as a `Place` names files; null: nowhere in the repository. */
  at: { file: string; line: number; column: number } | null;
}
