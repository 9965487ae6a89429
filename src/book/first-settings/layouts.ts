// no-unit-test: test/book/first-settings/folder.test.ts looks at folders with layouts
import { type BookLayouts, placementsOf, type Resolved, resolvedLayouts } from '../layouts';
import { noSettings } from '../settings/settings';

/** More of one ending in one folder are named together. */
const MOST_NAMED = 6;

/**
 * How settings name the layouts of a folder (absolute), so that these place what they place unnamed, in the same order:
 * those that place a picture of the book and those that take them in. Empty where no such words are found.
 */
export async function layoutNames(
  root: string,
  resolved: Resolved,
  isPicture: (path: string) => boolean,
  signal?: AbortSignal,
): Promise<string[]> {
  const all = placementsOf(resolved);
  const placing = all.placements.filter(({ picture }) => isPicture(picture)).map(({ file }) => file);
  const layouts = withMains([...new Set(placing)], resolved);
  for (const names of layouts.length > MOST_NAMED ? [byFolder(layouts), layouts] : [layouts]) {
    const layouts = names.map(written);
    const named = placementsOf(await resolvedLayouts(root, { ...noSettings, layouts }, { signal }));
    if (whatIsPlaced(named, isPicture) === whatIsPlaced(all, isPicture)) return layouts;
  }
  return [];
}

/** With the sources that take them in, each before the first that it does. */
function withMains(layouts: readonly string[], { sources }: Resolved): string[] {
  const takenInBy = new Map<string, string[]>();
  for (const { path, includes } of sources)
    for (const taken of includes) takenInBy.set(taken.path, [...(takenInBy.get(taken.path) ?? []), path]);
  const all = new Set<string>();
  for (const layout of layouts) {
    const above = new Set([layout]);
    // a set that grows is walked to its end
    for (const path of above) for (const main of takenInBy.get(path) ?? []) above.add(main);
    for (const path of [...above].reverse()) all.add(path);
  }
  return [...all];
}

const whatIsPlaced = ({ placements }: BookLayouts, isPicture: (path: string) => boolean): string =>
  JSON.stringify(
    placements.flatMap(({ file, line, column, picture, size }) =>
      isPicture(picture) ? [[file, line, column, picture, size]] : [],
    ),
  );

/** `chapters/*.md` for all that lie in one folder with one ending. */
const byFolder = (paths: readonly string[]): string[] => [
  ...new Set(paths.map(path => path.replace(/[^/]*(\.[^./]+)$/, '*$1'))),
];

/** A path that is no pattern: one that begins with `!` would take away. */
export const written = (path: string): string => (path.startsWith('!') ? `./${path}` : path);
