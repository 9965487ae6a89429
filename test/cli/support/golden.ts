import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';

/**
 * Compares a whole output with the one that was read and kept. `UPDATE_GOLDEN=1` writes it anew: read the difference
 * before it is committed.
 */
export function golden(name: string, actual: string): void {
  const file = path.join('test/golden', name);
  if (process.env.UPDATE_GOLDEN) {
    fs.mkdirSync(path.dirname(file), { recursive: true });
    fs.writeFileSync(file, actual);
  }
  assert.equal(actual, fs.readFileSync(file, 'utf8'), `differs from ${file}`);
}
