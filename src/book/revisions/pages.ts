import { namesPicture } from '../discovery/extensions';
import { matcher } from '../discovery/globs';
import { IGNORE_FILES, Ignored } from '../discovery/ignored';
import type { Settings } from '../settings/settings';
import type { Blobs } from './blobs';
import { isFile, type Snapshot } from './snapshot';

const MOST_BYTES = 1024 * 1024;

/** Says of a path whether it is a picture of the book, by the settings and ignore files of a snapshot. */
export type IsPage = (path: string) => boolean;

/**
 * The same pictures that `discover` finds in a folder: named by `pictures`, not by `ignore` or by an ignore file, in no
 * hidden folder and not in `node_modules`. `wanted`: other files than pictures. A folder that is left out is left out with all that it holds.
 */
export async function pagesOf(
  snapshot: Snapshot,
  { pictures, ignore }: Pick<Settings, 'pictures' | 'ignore'>,
  blobs: Pick<Blobs, 'small'>,
  wanted: IsPage = pictures ? matcher(pictures) : namesPicture,
): Promise<IsPage> {
  const unwanted = matcher(ignore);
  const texts = await ignoreTexts(snapshot, blobs);
  const folders = new Map<string, Ignored | null>([['', Ignored.none.with('', texts.get('') ?? [])]]);

  /** The ignore files that hold in a folder; null where nothing in it is a page. */
  const enter = (folder: string): Ignored | null => {
    const known = folders.get(folder);
    if (known !== undefined) return known;
    const [parent, name] = split(folder);
    const above = enter(parent);
    const left = !above || isHidden(name) || unwanted(folder) || above.has(folder, true);
    const inside = left ? null : above.with(folder, texts.get(folder) ?? []);
    folders.set(folder, inside);
    return inside;
  };
  return path => {
    const [folder, name] = split(path);
    if (isHidden(name) || !wanted(path) || unwanted(path)) return false;
    const ignored = enter(folder);
    return ignored !== null && !ignored.has(path, false);
  };
}

const isHidden = (name: string) => name.startsWith('.') || name === 'node_modules';

function split(path: string): [folder: string, name: string] {
  const slash = path.lastIndexOf('/');
  return [path.slice(0, Math.max(0, slash)), path.slice(slash + 1)];
}

/** By folder, in the order of `IGNORE_FILES`. */
async function ignoreTexts(
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
): Promise<ReadonlyMap<string, string[]>> {
  const texts = new Map<string, string[]>();
  for (const wanted of IGNORE_FILES)
    for (const [path, entry] of snapshot) {
      const [folder, name] = split(path);
      if (name !== wanted || !isFile(entry)) continue;
      const text = await blobs.small(entry.oid, MOST_BYTES, path);
      if (text) texts.set(folder, [...(texts.get(folder) ?? []), text.toString('utf8')]);
    }
  return texts;
}
