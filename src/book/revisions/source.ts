import path from 'node:path';
import { kindOf } from '../../layout';
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
      const found = await follow(snapshot, blobs, at);
      if (found === 'outside')
        return other(
          `"${written}" is a link that leads out of the book's folder. Copy the file itself into it.`,
        );
      if (!found && isFolder(snapshot, at))
        return { ok: false, why: 'other', folder: true, message: `"${written}" is not a file.` };
      const link = found ? undefined : foldersOf(at).find(folder => isLinkAt(snapshot, folder));
      if (link)
        return other(
          `"${written}" lies behind "${link}", a link to a folder, and git has no file of that name. Name it where it truly lies.`,
        );
      if (!found) return { ok: false, why: 'missing', message: `There is no file "${written}".` };
      if (!isFile(found.entry)) return other(`"${written}" is not a file.`);
      return { ok: true, file: path.join(root, ...found.at.split('/')), relative: found.at };
    },
    async bytes(file, most) {
      const found = await follow(snapshot, blobs, relative(file));
      if (!found || found === 'outside') throw new Error('is not there');
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
    if (found && found !== 'outside' && isFile(found.entry)) files.set(at, found.entry);
  }
  return files;
}

/** What a path leads to. Links among folders are not followed: a snapshot has no folders, only paths. */
async function follow(
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  start: string,
): Promise<{ at: string; entry: Entry } | 'outside' | null> {
  let at = start;
  for (let step = 0; step <= MOST_LINKS; step++) {
    const entry = snapshot.get(at);
    if (!entry || isSubmodule(entry)) return null;
    if (!isLink(entry)) return { at, entry };
    const target = (await blobs.small(entry.oid, LONGEST_PATH, at))?.toString('utf8') ?? '';
    if (path.posix.isAbsolute(target)) return 'outside';
    at = path.posix.join(path.posix.dirname(at), target);
    if (isOutside(at)) return 'outside';
  }
  return null;
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
