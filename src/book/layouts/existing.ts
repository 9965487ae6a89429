// no-unit-test: test/book/layouts/index.test.ts finds pictures by it
import fs from 'node:fs/promises';
import path from 'node:path';
import { inLanes } from '../lanes';
import { isWithin } from '../settings/within';

const READING = 16;

/**
 * Which of these paths (relative to `root`, forward slashes) are there: gives a path as the file system spells it, or
 * null. Their folders are listed once each, none outside the root. Unicode is compared in one form, case as it is.
 */
export async function existingFiles(
  root: string,
  paths: Iterable<string>,
): Promise<(path: string) => string | null> {
  const realRoot = await fs.realpath(root);
  const folders = [...new Set([...paths].map(name => path.posix.dirname(name)))];
  const there = new Map<string, string>();
  await inLanes(folders, READING, async folder => {
    for (const name of await namesIn(path.join(root, folder), realRoot)) {
      const found = folder === '.' ? name : `${folder}/${name}`;
      there.set(found.normalize('NFC'), found);
    }
  });
  return name => there.get(name.normalize('NFC')) ?? null;
}

async function namesIn(folder: string, realRoot: string): Promise<string[]> {
  try {
    if (!isWithin(realRoot, await fs.realpath(folder))) return [];
    const entries = await fs.readdir(folder, { withFileTypes: true });
    return entries.filter(entry => !entry.isDirectory()).map(({ name }) => name);
  } catch {
    return []; // no such folder: nothing is in it
  }
}
