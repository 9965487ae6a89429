import path from 'node:path';
import { IGNORE_FILES, LONGEST_IGNORE } from '../discovery/ignored';
import { LED_NOWHERE, LED_OUT, type Look } from '../discovery/look';
import type { Listed, Tree } from '../discovery/tree';
import type { Blobs } from '../git/blobs';
import { type Entry, isFile, isLink, isSubmodule, type Snapshot } from '../git/snapshot';

/** A link that leads further than through so many others leads nowhere. */
const MOST_LINKS = 8;
const LONGEST_PATH = 4096;

/** What a path leads to: a file or a submodule, where it truly lies; a folder; out of the book's folder; null: to nothing. */
export type Led = { at: string; entry: Entry } | { folder: string } | 'outside' | null;

/** A book's folder as a revision or the index holds it, walked through as the one on the disk is. */
export class GitTree implements Tree {
  /** What stands in each folder, by name: a snapshot has no folders, only paths. */
  #folders: Map<string, Map<string, Entry | 'folder'>> | null = null;

  constructor(
    readonly snapshot: Snapshot,
    private readonly blobs: Pick<Blobs, 'small'>,
  ) {}

  /** Submodules belong to another repository: they are left out. */
  async list(folder: string): Promise<Listed[]> {
    return [...(await this.#held(folder))].flatMap(([name, held]): Listed[] => {
      if (held === 'folder') return [{ name, kind: 'folder' }];
      return isSubmodule(held) ? [] : [{ name, kind: isLink(held) ? 'link' : 'file' }];
    });
  }

  async look(at: string): Promise<Look | null> {
    const led = await this.follow(at);
    if (led === 'outside') return { kind: 'obstacle', why: LED_OUT };
    if (led === null) return { kind: 'obstacle', why: LED_NOWHERE };
    if ('folder' in led) return { kind: 'folder', real: led.folder, linked: led.folder !== at };
    return isFile(led.entry) ? { kind: 'file' } : null;
  }

  async ignoreTexts(folder: string): Promise<string[]> {
    const held = await this.#held(folder);
    const texts: string[] = [];
    for (const name of IGNORE_FILES) {
      const entry = held.get(name);
      if (!entry || entry === 'folder' || !isFile(entry)) continue;
      const text = await this.blobs.small(entry.oid, LONGEST_IGNORE, path.posix.join(folder, name));
      if (text) texts.push(text.toString('utf8'));
    }
    return texts;
  }

  /** The content of the file that a path leads to; null where it leads to none. */
  async contentAt(at: string): Promise<Entry | null> {
    const led = await this.follow(at);
    return led && typeof led === 'object' && 'entry' in led && isFile(led.entry) ? led.entry : null;
  }

  /** Whether a path leads into a submodule, which belongs to another repository. */
  async isBeyond(at: string): Promise<boolean> {
    const led = await this.follow(at);
    return led !== null && typeof led === 'object' && 'entry' in led && isSubmodule(led.entry);
  }

  /** Which of these paths are there, as the tree spells them; as `existingFiles` says it of the disk. */
  async existing(paths: Iterable<string>): Promise<(path: string) => string | null> {
    const there = new Map([...this.snapshot.keys()].map(at => [at.normalize('NFC'), at]));
    for (const folder of new Set([...paths].map(at => path.posix.dirname(at))))
      if (!this.#all().has(folder))
        for (const [name, held] of await this.#held(folder))
          if (held !== 'folder') there.set(`${folder}/${name}`.normalize('NFC'), `${folder}/${name}`);
    // what a submodule holds is not known here, and is not to be missed
    for (const at of paths)
      if (!there.has(at.normalize('NFC')) && (await this.isBeyond(at))) there.set(at.normalize('NFC'), at);
    return at => there.get(at.normalize('NFC')) ?? null;
  }

  /** Through links to files, and through those to folders. */
  async follow(start: string): Promise<Led> {
    let at = start;
    for (let step = 0; step <= MOST_LINKS; step++) {
      // what is no file, link or submodule itself may lie behind one
      const held = [...foldersOf(at), at].find(path => this.snapshot.has(path));
      if (held === undefined) return this.#all().has(at) ? { folder: at } : null;
      const entry = this.snapshot.get(held)!;
      if (isSubmodule(entry)) return { at: held, entry };
      if (!isLink(entry)) return held === at ? { at, entry } : null;
      const target = (await this.blobs.small(entry.oid, LONGEST_PATH, held))?.toString('utf8') ?? '';
      if (path.posix.isAbsolute(target)) return 'outside';
      at = plain(path.posix.join(path.posix.dirname(held), target, at.slice(held.length)));
      if (isOutside(at)) return 'outside';
    }
    return null;
  }

  /** What a folder holds, wherever it truly lies; nothing where there is none. */
  async #held(folder: string): Promise<ReadonlyMap<string, Entry | 'folder'>> {
    const led = this.#all().has(folder) ? { folder } : await this.follow(folder);
    return (led && typeof led === 'object' && 'folder' in led && this.#all().get(led.folder)) || new Map();
  }

  #all(): Map<string, Map<string, Entry | 'folder'>> {
    if (this.#folders) return this.#folders;
    const folders = new Map<string, Map<string, Entry | 'folder'>>([['', new Map()]]);
    const inside = (folder: string): Map<string, Entry | 'folder'> => {
      let held = folders.get(folder);
      if (!held) {
        held = new Map();
        folders.set(folder, held);
        inside(folderOf(folder)).set(nameOf(folder), 'folder');
      }
      return held;
    };
    for (const [at, entry] of this.snapshot) inside(folderOf(at)).set(nameOf(at), entry);
    this.#folders = folders;
    return folders;
  }
}

export const isOutside = (at: string): boolean => at === '..' || at.startsWith('../') || path.isAbsolute(at);

/** Folders that a path lies in, the outermost first. */
export const foldersOf = (at: string): string[] =>
  [...at.matchAll(/\//g)].map(({ index }) => at.slice(0, index));

/** A link to a folder may be written with a slash at its end, and one to the book's own folder with a dot. */
const plain = (at: string): string => at.replace(/\/+$/, '').replace(/^\.$/, '');

const folderOf = (at: string): string => at.slice(0, Math.max(0, at.lastIndexOf('/')));
const nameOf = (at: string): string => at.slice(at.lastIndexOf('/') + 1);
