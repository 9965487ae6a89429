// no-unit-test: part of the tests
import fs from 'node:fs';

/** A Debian file that a test checks against. Missing, it fails and says which package holds it: a check is never skipped. */
export function need(file: string, apt: string): string {
  if (!fs.existsSync(file)) throw new Error(`${file} is missing: apt-get install ${apt}`);
  return file;
}
