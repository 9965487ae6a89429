// no-unit-test: test/book/layouts/index.test.ts reads books by it
import { matcher } from '../discovery/globs';
import type { LayoutFile } from './sources';

/** A layout source, and of the others those that it takes in, by path. */
interface Taking {
  file: Pick<LayoutFile, 'path' | 'around'>;
  includes: readonly { path: string }[];
}

/**
 * The sources that the settings (`patterns` of `layouts`) do not name and that one which they name takes in, be it through
 * others: whoever names a main file means its chapters. Those that a pattern takes away stay away, with what they take in.
 */
export function takenIn(sources: readonly Taking[], patterns: readonly string[]): ReadonlySet<string> {
  const isLeftOut = matcher(patterns.filter(one => one.startsWith('!')).map(one => one.slice(1)));
  const byPath = new Map(sources.map(source => [source.file.path, source]));
  const taken = new Set<string>();
  const open = sources.filter(({ file }) => !file.around);
  for (let source = open.pop(); source; source = open.pop())
    for (const { path } of source.includes) {
      const other = byPath.get(path);
      if (!other?.file.around || taken.has(path) || isLeftOut(path)) continue;
      taken.add(path);
      open.push(other);
    }
  return taken;
}
