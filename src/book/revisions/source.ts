import path from 'node:path';
import { kindOf } from '../../layout';
import { discover } from '../discovery/discover';
import type { Blobs } from '../git/blobs';
import { NotInCloneError } from '../git/git';
import { type Entry, isFile, isLink, type Snapshot } from '../git/snapshot';
import { type SettingsFiles, TooLarge, type Within } from '../settings/within';
import { foldersOf, GitTree, isOutside } from './git-tree';

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
  const tree = new GitTree(snapshot, blobs);
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
      const found = await tree.follow(at);
      if (found === 'outside')
        return other(
          `"${written}" is a link that leads out of the book's folder. Copy the file itself into it.`,
        );
      if (found && 'folder' in found)
        return { ok: false, why: 'other', folder: true, message: `"${written}" is not a file.` };
      if (!found) return { ok: false, why: 'missing', message: `There is no file "${written}".` };
      if (!isFile(found.entry)) return other(`"${written}" is not a file.`);
      return { ok: true, file: path.join(root, ...found.at.split('/')), relative: found.at };
    },
    async bytes(file, most) {
      const entry = await tree.contentAt(relative(file));
      if (!entry) throw new Error('is not there');
      const bytes = await blobs.small(entry.oid, most, relative(file)).catch(error => {
        if (error instanceof NotInCloneError) lacking = error;
        throw error;
      });
      if (!bytes) throw new TooLarge(most);
      return bytes;
    },
    async layouts() {
      return [...(await filesIn(snapshot, blobs, at => kindOf(at) !== null)).keys()];
    },
    complete() {
      if (lacking) throw lacking;
    },
  };
}

/**
 * The files of a snapshot whose names are wanted, found as those of a folder are. A link stands for the file or the folder that
 * it leads to; one that leads out, or to nothing, for none.
 */
async function filesIn(
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  wanted: (path: string) => boolean,
): Promise<Map<string, Entry>> {
  const tree = new GitTree(snapshot, blobs);
  const { files } = await discover({ root: '/', paths: ['/'], settings: EVERYTHING, wanted, tree });
  return contentsOf(
    files.map(({ path }) => path),
    tree,
  );
}

const EVERYTHING = { pictures: null, ignore: [] };

/** What paths of a tree hold, by path; those that lead to no file are left out. */
export async function contentsOf(paths: Iterable<string>, tree: GitTree): Promise<Map<string, Entry>> {
  const contents = new Map<string, Entry>();
  for (const path of paths) {
    const entry = await tree.contentAt(path);
    if (entry) contents.set(path, entry);
  }
  return contents;
}

const isLinkAt = (snapshot: Snapshot, at: string): boolean => {
  const entry = snapshot.get(at);
  return entry !== undefined && isLink(entry);
};
