// no-unit-test: types only
/**
 * Where a book lies for those who meet its findings elsewhere, as services do that review a repository. Paths are
 * relative to the repository's root, or to the book's where there is no repository; forward slashes.
 */
export interface Place {
  /** The book's folder: '' for the root itself, else with a slash at its end. */
  folder: string;
  /** The settings; null where there are none, or not in there. */
  settings: string | null;
}
