import { type DiscoverOptions, type Discovery, discover } from './discovery/discover';
import { matcher } from './discovery/globs';
import { placementsOf, type Resolved, resolvedLayouts } from './layouts';
import { type LaidOut, laidOut } from './layouts/laid-out';
import type { Reading } from './layouts/sources';
import type { Settings } from './settings/settings';

export interface BookFiles extends Discovery, Omit<LaidOut, 'files' | 'notices'> {
  /** Every picture in the named paths, of the book or not; sorted by path. */
  all: Discovery['files'];
  layouts: Resolved;
  /** What the layouts have made of it, in sentences. */
  ofLayouts: readonly string[];
  idleLayouts: readonly string[];
}

/** The pictures of a book in the named paths: by the settings, else by the layouts, else all of them. */
export async function bookFiles(
  options: Omit<DiscoverOptions, 'settings'> & Reading & { settings: Settings },
): Promise<BookFiles> {
  const found = await discover(options);
  const layouts = await resolvedLayouts(options.root, options.settings, options);
  const { files, notices, ...laid } = laidOut(found.files, placementsOf(layouts), options);
  return {
    ...found,
    ...laid,
    // with layouts the book is what they place
    passedOver: layouts.sources.length ? [] : found.passedOver,
    files,
    all: found.files,
    layouts,
    ofLayouts: notices,
    idleLayouts: idleIn(layouts),
  };
}

/** Of the patterns that name layouts those that match none. */
function idleIn({ sources, notRead, named }: Resolved): string[] {
  const paths = [...sources, ...notRead].map(({ path }) => path);
  return (named ?? []).filter(pattern => !paths.some(matcher([pattern.replace(/^!/, '')])));
}
