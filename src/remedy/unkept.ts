import fs from 'node:fs/promises';
import { hashOf } from '../book/hash';
import { originalName } from '../book/original-names';
import { fileSource, readHeaders, UnreadableError } from '../picture/header';

/**
 * Pictures of which no journal knows and whose own record says that they were converted: by their path, the hash of what
 * each was made from. A result beside its original, as its name says, is none of these, nor is one whose original
 * is in the book.
 * @param unknown absolute paths of pictures that no journal knows
 * @param all of the book
 */
export async function unkept(
  unknown: readonly string[],
  all: readonly string[],
): Promise<Map<string, string>> {
  const made = new Map<string, string>();
  for (const file of unknown) {
    const from = originalName(file) ? null : await sourceOf(file);
    if (from) made.set(file, from);
  }
  if (!made.size) return made;
  const there = new Set(await Promise.all(all.map(file => hashOf(file).catch(() => null))));
  return new Map([...made].filter(([, from]) => !there.has(from)));
}

/** What a file says that it was made from, by its header alone; null where it says nothing, or cannot be read. */
export async function sourceOf(path: string): Promise<string | null> {
  const file = await fs.open(path).catch(() => null);
  if (!file) return null;
  try {
    const [page] = readHeaders(fileSource(file.fd, (await file.stat()).size));
    return page instanceof UnreadableError ? null : (page.remedied?.from ?? null);
  } catch (error) {
    if (error instanceof UnreadableError) return null;
    throw error;
  } finally {
    await file.close();
  }
}
