// no-unit-test: test/book/discovery/discover.test.ts and ignored.test.ts walk through the disk by it
import fs from 'node:fs/promises';
import path from 'node:path';
import { IGNORE_FILES, LONGEST_IGNORE } from './ignored';
import { type Look, look } from './look';

/**
 * What is walked through to find a book's files: its folder on the disk, or as git holds it. Paths are relative to the book's
 * root, with forward slashes; the root is ''.
 */
export interface Tree {
  /** What stands in a folder, also in one behind a link. @throws what the file system says */
  list(folder: string): Promise<Listed[]>;
  /** `real` of a folder is a path of the tree too. Null: it leads to what the tree does not hold. */
  look(path: string): Promise<Look | null>;
  /** Of the ignore files in a folder, in the order of `IGNORE_FILES`. */
  ignoreTexts(folder: string): Promise<string[]>;
}

export interface Listed {
  name: string;
  /** `other` is to be looked at. */
  kind: 'file' | 'folder' | 'link' | 'other';
}

/** A book's folder on the disk. Nothing is opened but ignore files. */
export class DiskTree implements Tree {
  private constructor(
    private readonly root: string,
    private readonly realRoot: string,
  ) {}

  static async at(root: string): Promise<DiskTree> {
    return new DiskTree(root, await fs.realpath(root));
  }

  async list(folder: string): Promise<Listed[]> {
    const entries = await fs.readdir(this.file(folder), { withFileTypes: true });
    return entries.map(entry => ({
      name: entry.name,
      kind: entry.isDirectory()
        ? 'folder'
        : entry.isSymbolicLink()
          ? 'link'
          : entry.isFile()
            ? 'file'
            : 'other',
    }));
  }

  async look(at: string): Promise<Look> {
    const seen = await look(this.file(at), this.realRoot);
    return seen.kind === 'folder' ? { ...seen, real: relativeTo(this.realRoot, seen.real) } : seen;
  }

  async ignoreTexts(folder: string): Promise<string[]> {
    const texts = await Promise.all(IGNORE_FILES.map(name => textOf(path.join(this.file(folder), name))));
    return texts.filter(text => text !== null);
  }

  private file(at: string): string {
    return path.join(this.root, at);
  }
}

export const relativeTo = (root: string, file: string): string =>
  path.relative(root, file).split(path.sep).join('/');

/** Regular files only: a pipe of this name would be waited for without end. */
async function textOf(file: string): Promise<string | null> {
  try {
    const stat = await fs.lstat(file);
    return stat.isFile() && stat.size <= LONGEST_IGNORE ? await fs.readFile(file, 'utf8') : null;
  } catch {
    return null;
  }
}
