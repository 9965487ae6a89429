import path from 'node:path';
import { kindOf } from '../../layout';
import type { Unreadable } from '../../shared/picture';
import { LED_NOWHERE, LED_OUT } from '../discovery/look';
import { type SettingsFiles, TooLarge, type Within } from '../settings/within';
import type { Blobs } from './blobs';
import { NotInCloneError } from './git';
import { pagesOf } from './pages';
import { type Entry, isFile, isLink, isSubmodule, type Snapshot } from './snapshot';

/** A link that leads further than through so many others leads nowhere. */
const MOST_LINKS = 8;
const LONGEST_PATH = 4096;

/** Settings, and the files that they name, as a revision or the index holds them. */
export interface RevisionFiles extends SettingsFiles {
  /**
   * To be asked after reading: what a clone lacks is no slip in the settings, as who reads them takes it.
   * @throws NotInCloneError
   */
  complete(): void;
}

/** `root` is the book's folder. */
export function filesOf(root: string, snapshot: Snapshot, blobs: Pick<Blobs, 'small'>): RevisionFiles {
  let lacking: NotInCloneError | null = null;
  const relative = (file: string) => path.relative(root, file).split(path.sep).join('/');
  return {
    async within(_, folder, written): Promise<Within> {
      const at = relative(path.resolve(folder, written));
      const other = (message: string): Within => ({ ok: false, why: 'other', message });
      if (isOutside(at))
        return other(
          `"${written}" lies outside the book's folder. Copy it into the folder and name it there.`,
        );
      const link = foldersOf(at).find(folder => isLinkAt(snapshot, folder));
      if (link)
        return other(
          `"${written}" lies behind "${link}", a link to a folder, and git has no file of that name. Name it where it truly lies.`,
        );
      const found = await follow(snapshot, blobs, at);
      if (found === 'outside')
        return other(
          `"${written}" is a link that leads out of the book's folder. Copy the file itself into it.`,
        );
      if (found === 'folder')
        return { ok: false, why: 'other', folder: true, message: `"${written}" is not a file.` };
      if (!found) return { ok: false, why: 'missing', message: `There is no file "${written}".` };
      if (!isFile(found.entry)) return other(`"${written}" is not a file.`);
      return { ok: true, file: path.join(root, ...found.at.split('/')), relative: found.at };
    },
    async bytes(file, most) {
      const found = await follow(snapshot, blobs, relative(file));
      if (!isFound(found)) throw new Error('is not there');
      const bytes = await blobs.small(found.entry.oid, most, found.at).catch(error => {
        if (error instanceof NotInCloneError) lacking = error;
        throw error;
      });
      if (!bytes) throw new TooLarge(most);
      return bytes;
    },
    async layouts() {
      const isLayout = await pagesOf(
        snapshot,
        { pictures: null, ignore: [] },
        blobs,
        at => kindOf(at) !== null,
      );
      return [...(await filesIn(snapshot, blobs, isLayout)).keys()];
    },
    complete() {
      if (lacking) throw lacking;
    },
  };
}

/**
 * The files of a snapshot whose names are wanted. A link stands for the file that it leads to, as it does in a folder; one that
 * leads out, or to no file, for none.
 */
export async function filesIn(
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  isWanted: (path: string) => boolean,
): Promise<Map<string, Entry>> {
  const files = new Map<string, Entry>();
  for (const [at, entry] of snapshot) {
    if (isFile(entry) && isWanted(at)) files.set(at, entry);
    if (!isLink(entry) || !isWanted(at)) continue;
    const found = await follow(snapshot, blobs, at);
    if (isFound(found) && isFile(found.entry)) files.set(at, found.entry);
  }
  return files;
}

/** Links whose names are wanted and that lead to nothing that can be read, and why; as `look` says it of those in a folder. */
export async function linksAstray(
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  isWanted: (path: string) => boolean,
): Promise<Map<string, Unreadable>> {
  const astray = new Map<string, Unreadable>();
  for (const [at, entry] of snapshot) {
    if (!isLink(entry) || !isWanted(at)) continue;
    const found = await follow(snapshot, blobs, at);
    if (found === 'outside') astray.set(at, LED_OUT);
    if (found === null) astray.set(at, LED_NOWHERE);
  }
  return astray;
}

/** What a path leads to: a file or a submodule, where it truly lies; a folder; out of the book's folder; null: to nothing. */
type Led = { at: string; entry: Entry } | 'folder' | 'outside' | null;

const isFound = (led: Led): led is { at: string; entry: Entry } => led !== null && typeof led === 'object';

/** Through links to files, and through those to folders. */
async function follow(snapshot: Snapshot, blobs: Pick<Blobs, 'small'>, start: string): Promise<Led> {
  let at = start;
  for (let step = 0; step <= MOST_LINKS; step++) {
    // a snapshot has no folders, only paths: what is no file, link or submodule itself may lie behind one
    const held = [...foldersOf(at), at].find(path => snapshot.has(path));
    if (held === undefined) return isFolder(snapshot, at) ? 'folder' : null;
    const entry = snapshot.get(held)!;
    if (isSubmodule(entry)) return { at: held, entry };
    if (!isLink(entry)) return held === at ? { at, entry } : null;
    const target = (await blobs.small(entry.oid, LONGEST_PATH, held))?.toString('utf8') ?? '';
    if (path.posix.isAbsolute(target)) return 'outside';
    at = path.posix.join(path.posix.dirname(held), target, at.slice(held.length));
    if (isOutside(at)) return 'outside';
  }
  return null;
}

/** The content that a picture of a name has in a snapshot, wherever it lies; null where it has none. */
export async function contentAt(
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  name: string,
): Promise<Entry | null> {
  const found = await follow(snapshot, blobs, name);
  return isFound(found) && isFile(found.entry) ? found.entry : null;
}

const isLinkAt = (snapshot: Snapshot, at: string): boolean => {
  const entry = snapshot.get(at);
  return entry !== undefined && isLink(entry);
};

/** Folders that a path lies in, the outermost first. */
const foldersOf = (at: string): string[] => [...at.matchAll(/\//g)].map(({ index }) => at.slice(0, index));

/** A snapshot has no folders, only what lies in them. */
function isFolder(snapshot: Snapshot, at: string): boolean {
  for (const path of snapshot.keys()) if (path.startsWith(`${at}/`)) return true;
  return false;
}

const isOutside = (at: string): boolean => at === '..' || at.startsWith('../') || path.isAbsolute(at);
