// What a test run left behind, judged: a run that did not reach its end, or ran nothing, has failed.
import fs from 'node:fs';

/** Reads the counts that counting-reporter.cjs wrote. */
export function readCounts(file) {
  let counts = { passed: 0, failed: 0, ended: false };
  try {
    counts = JSON.parse(fs.readFileSync(file, 'utf8'));
  } catch {
    // the process died before its first test
  }
  const { passed, failed, ended } = counts;
  if (!failed && !ended) return { passed, failed: 1, note: 'the run died before its end' };
  if (!failed && !passed) return { passed, failed: 1, note: 'no test ran' };
  return { passed, failed, note: '' };
}
