// no-unit-test: part of the tests
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';

/** SHA-256 of every file of a folder that is not hidden, by its path. */
export function contents(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  const visit = (below: string) => {
    for (const entry of fs.readdirSync(path.join(folder, below), { withFileTypes: true })) {
      const at = path.posix.join(below, entry.name);
      if (entry.name.startsWith('.')) continue;
      if (entry.isDirectory()) visit(at);
      else files[at] = hashOf(path.join(folder, at));
    }
  };
  visit('');
  return files;
}

export const hashOf = (file: string) => createHash('sha256').update(fs.readFileSync(file)).digest('hex');

/** Hidden leftovers of a folder. */
export const leftovers = (folder: string): string[] =>
  fs.readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.tmp'));
