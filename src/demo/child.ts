// no-unit-test: test/editor/checker/start.test.ts runs the built one
import '../picture/decode-binary';
import { serve } from '../picture/child';
import type { DemoDone, DemoTask } from '../shared/demo-protocol';
import { DemoError, makeDemo } from '.';

/** All scenes in all encodings, as work: its deadline is made for reading, which is quicker. */
const MEGAPIXELS = 500;

// A child process that draws the demo book: the editor and its checker load no decoder.
serve<DemoTask, DemoDone>(async ({ folder }, onSize) => {
  onSize(0, MEGAPIXELS);
  try {
    await makeDemo(folder);
    return { refused: null };
  } catch (error) {
    if (error instanceof DemoError) return { refused: error.message };
    throw error;
  }
});
