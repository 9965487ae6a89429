import { candidates, pathFrom, type Reference, type Resolution, resolve } from '../../layout';
import type { ResolvedLayout } from '.';

/** Where a file or a folder (relative to the root, '' for that itself) will be once others have their new names. */
export type Moving = (path: string) => string;

type Found = Extract<Resolution, { kind: 'found' }>;

/**
 * How a line has to name its picture once both may be elsewhere; `path` null: nothing that could stand there leads to
 * it. Null where the line stays right as it is.
 */
export function pathOnceMoved(
  { path: file, kind, mainFolders }: Pick<ResolvedLayout, 'path' | 'kind' | 'mainFolders'>,
  { reference, found }: { reference: ResolvedLayout['placed'][number]['reference']; found: Found },
  moving: Moving,
): { picture: string; path: string | null } | null {
  const picture = moving(found.path);
  const newFile = moving(file);
  const started = mainFolders.map(moving);
  if (picture === found.path && newFile === file && started.join() === mainFolders.join()) return null;
  const surroundings = { mainFolders: started };
  const leadsThere = (path: string, literal: string | null) => {
    const isThere = (other: string) => other.normalize('NFC') === picture.normalize('NFC');
    return resolve({ ...reference, path, literal }, newFile, kind, isThere, surroundings).kind === 'found';
  };
  if (leadsThere(reference.path, reference.literal)) return null;
  const places = candidates(reference, newFile, kind, surroundings);
  const ways = waysTo(picture, reference, places, moving(found.base));
  return { picture, path: ways.find(path => leadsThere(path, null)) ?? null };
}

/**
 * How a line could name a picture (relative to the root) from each folder that its tool looks in, `first` before all, in
 * the form that its path has.
 */
export function waysTo(
  picture: string,
  reference: Reference,
  places: ReturnType<typeof candidates>,
  first: string,
): string[] {
  const bases = new Set([first, ...(places === 'elsewhere' ? [] : places.map(({ base }) => base))]);
  return [...bases].flatMap(base => pathFrom(reference, { base }, picture) ?? []);
}
