// no-unit-test: test/report/compare/text.test.ts and markdown.test.ts read what comes of it
import type { Comparison } from '../../shared/comparison';
import { type Block, blocksOf } from '../text/blocks';

/** What is new, or ended, on the changed pictures and on the book as a whole, by rule; a picture is called as it is now. */
export const blocksNow = ({ changes, book }: Comparison, which: 'new' | 'ended'): Block[] =>
  blocksOf({
    pictures: changes.flatMap(({ path, pages }) =>
      pages.flatMap(({ before, after, findings }) => {
        const picture = after ?? before;
        return picture ? [{ path, facts: picture.facts, findings: findings[which] }] : [];
      }),
    ),
    findings: book[which],
  });

/** The same in a line a rule: `warning mixed-encodings: a.tif, b.tif`. */
export const namesOf = (block: Block): string[] => [
  ...new Set(block.entries.flatMap(({ pictures }) => pictures)),
];
