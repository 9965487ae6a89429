// no-unit-test: types only

/** Draws the demo book into a folder (absolute) that is new or empty. */
export interface DemoTask {
  folder: string;
}

/** `refused`: why the folder cannot be used, and what to do; nothing was written then. */
export interface DemoDone {
  refused: string | null;
}
