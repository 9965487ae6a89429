// no-unit-test: test/book/comparison/compare-settings.test.ts compares books through it
import type { Advised, Comparison } from '../../shared/comparison';

/** Pictures of the same content of which a finding that stayed asks for something else, together where it is the same. */
export function advisedOtherwise(
  changes: Comparison['changes'],
  others: Comparison['others'],
): Comparison['advice'] {
  const renamed = changes
    .filter(({ kind }) => kind === 'renamed')
    .flatMap(({ path, pages }) => pages.map(({ findings }) => ({ path, findings })));
  const ways = new Map<string, { advice: Advised; paths: Set<string> }>();
  for (const { path, findings } of [...renamed, ...others]) {
    const { advice } = findings;
    if (!advice) continue;
    const key = JSON.stringify([advice.target, advice.before, advice.after]);
    const { paths } = ways.get(key) ?? { paths: new Set() };
    ways.set(key, { advice, paths: paths.add(path) });
  }
  return [...ways.values()].map(({ advice, paths }) => ({ ...advice, pictures: [...paths].sort() }));
}
