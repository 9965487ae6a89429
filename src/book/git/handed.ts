// no-unit-test: test/book/comparison/pixels.test.ts and test/cli/actions/compare.test.ts read contents through it
import fs from 'node:fs/promises';
import path from 'node:path';
import { LONGEST_POINTER } from '../../picture/header/pointer';
import { HELD } from '../../picture/open';
import type { PictureFacts } from '../../shared/picture';
import type { Content } from '../../shared/reader-protocol';
import { contentOf, type Stores } from './content';
import { type Sized, Stretches } from './stretches';
import { inTemporaryFolder } from './temporary';

/** Hands a content over for as long as `use` takes, each once, in about the order in which they were named. */
export type Hand = <T>(
  content: Sized,
  use: (had: (Content & { lost?: undefined }) | { lost: PictureFacts }) => Promise<T>,
) => Promise<T>;

/**
 * Has contents that git holds ready for those who read them: one git unpacks many, ahead of them.
 * @param contents each once
 * @throws GitError; those of `work`
 */
export function withContents<T>(
  contents: readonly Sized[],
  stores: Stores,
  work: (hand: Hand) => Promise<T>,
): Promise<T> {
  const { repository, signal } = stores;
  // what may be a large-file pointer is looked at first, and what is large lies in a file of its own
  const ahead = new Set(contents.filter(({ size }) => size >= LONGEST_POINTER && size <= HELD));
  return inTemporaryFolder(async folder => {
    const stretches = new Stretches(repository, [...ahead], { folder, signal });
    const hand: Hand = async (sized, use) => {
      signal?.throwIfAborted();
      const called = path.join(repository.root, sized.path);
      if (ahead.has(sized)) return stretches.take(sized.oid, content => use({ ...content, called }));
      const found = await contentOf(sized, path.join(folder, sized.oid), stores);
      if (found.lost) return use(found);
      const { file, pointer } = found;
      // the store's own file stays
      return use({ file, called }).finally(() => (pointer ? undefined : fs.rm(file)));
    };
    try {
      return await work(hand);
    } finally {
      await stretches.close();
    }
  });
}
