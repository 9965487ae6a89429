// no-unit-test: test/remedy/relinking/again.test.ts undoes in a copy that remembers nothing
import fs from 'node:fs/promises';
import path from 'node:path';
import { resolvedLayouts } from '../../book/layouts';
import { originalName } from '../../book/original-names';
import { isWithin } from '../../book/settings/within';
import type { Relinked } from '../../shared/conversion';
import { sourceOf, unkept } from '../unkept';
import type { RelinkUndoing } from './undo';

/**
 * Lines that place results of conversions where nothing is remembered of what they placed before, as in a fresh clone:
 * told once a layout; null where there are none.
 * @param pictures absolute paths of the book's
 */
export async function unrememberedLines(
  { root, paths, settings, open }: Pick<RelinkUndoing, 'root' | 'paths' | 'settings' | 'open'>,
  pictures: readonly string[],
): Promise<Relinked | null> {
  const realRoot = await fs.realpath(root);
  const { sources } = await resolvedLayouts(realRoot, settings, { open });
  const named = await Promise.all(paths.map(file => fs.realpath(file).catch(() => path.resolve(file))));
  const lines = sources.flatMap(({ path: file, placed }) =>
    placed.flatMap(({ reference: { line }, found }) => {
      if (found.kind !== 'found') return [];
      const picture = path.join(realRoot, found.path);
      const isMeant = [file, found.path].some(at =>
        named.some(outer => isWithin(outer, path.join(realRoot, at))),
      );
      return isMeant ? [{ file, line, picture }] : [];
    }),
  );
  const results = await resultsAmong([...new Set(lines.map(({ picture }) => picture))], pictures);
  const problems = sources.flatMap(({ path: file }): Relinked['problems'] => {
    const [first, ...others] = lines.filter(each => each.file === file && results.has(each.picture));
    return first ? [{ file, line: first.line, why: whyUnknown(others.length) }] : [];
  });
  return problems.length ? { changes: [], settings: [], placedBefore: 0, problems } : null;
}

/** Those of placed pictures that are results of others that are there: by their names, or by their own records. */
async function resultsAmong(placed: readonly string[], pictures: readonly string[]): Promise<Set<string>> {
  const results = new Set<string>();
  const recorded: string[] = [];
  for (const file of placed) {
    const original = originalName(file);
    const stat = original && (await fs.stat(original).catch(() => null));
    if (stat) results.add(file);
    else if (!original && (await sourceOf(file))) recorded.push(file);
  }
  const replaced = await unkept(recorded, pictures);
  for (const file of recorded) if (!replaced.has(file)) results.add(file);
  return results;
}

function whyUnknown(others: number): string {
  const [what, they] = others
    ? [`It and ${others} more ${others === 1 ? 'line' : 'lines'} place results`, 'they']
    : ['It places a result', 'it'];
  return `${what} of a conversion, and what ${they} placed before is not known here: that is remembered where the lines were changed, not in a clone or a copy. Bring the layout back with git, or from a copy of your own, or place the originals yourself.`;
}
