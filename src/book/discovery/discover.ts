import path from 'node:path';
import type { Unreadable } from '../../shared/picture';
import type { Settings } from '../settings/settings';
import { SETTINGS_FILE } from '../settings/settings-file';
import { namesPicture } from './extensions';
import { matcher } from './globs';
import { Ignored } from './ignored';
import { isPassedOver } from './passed-over';
import { DiskTree, type Listed, relativeTo, type Tree } from './tree';

/** A file of the book. */
export interface Found {
  /** Relative to the root, forward slashes. */
  path: string;
  file: string;
  /** Why it must not be opened; null for a regular file. */
  obstacle: Unreadable | null;
}

export interface Discovery {
  /** Sorted by path. */
  files: Found[];
  /** Folders that were not entered although they may hold pictures, and why; sorted. */
  notEntered: { path: string; why: string }[];
  /** Pictures that ignore files leave out. Those in ignored folders are not counted. */
  ignored: number;
  /** Patterns of `ignore` that match nothing of what was searched. */
  idleIgnore: string[];
  /** Folders below the root that have settings of their own, so that each is a book by itself; sorted. */
  innerBooks?: string[];
  /** Raw files of cameras and documents, where all pictures of the folders are the book's; sorted. */
  passedOver?: string[];
}

export interface DiscoverOptions {
  root: string;
  /** Absolute; folders are searched, files are taken as they are named. */
  paths: readonly string[];
  settings: Pick<Settings, 'pictures' | 'ignore'>;
  /** Other files than pictures, by their path. */
  wanted?: (path: string) => boolean;
  /** The book's folder as it is walked through; left out: as it lies on the disk. */
  tree?: Tree;
  signal?: AbortSignal;
}

/**
 * The files of a book. Nothing is opened but ignore files; nothing outside the root is looked into. Hidden files and
 * folders and `node_modules` hold no pages of a book and are passed over, unless they are named.
 */
export async function discover(options: DiscoverOptions): Promise<Discovery> {
  const walk = new Walk(options, options.tree ?? (await DiskTree.at(options.root)));
  for (const named of options.paths) await walk.take(named);
  return {
    files: [...walk.files.values()].sort(byPath),
    notEntered: walk.notEntered.sort(byPath),
    ignored: walk.ignored,
    idleIgnore: [...walk.idleIgnore.keys()],
    innerBooks: walk.innerBooks.sort(compare),
    passedOver: walk.passedOver.sort(compare),
  };
}

interface Folder {
  file: string;
  relative: string;
  /** Real paths of the folders walked through to it, itself last: a link back to one of them is a circle. */
  chain: string[];
}

class Walk {
  readonly files = new Map<string, Found>();
  readonly notEntered: Discovery['notEntered'] = [];
  ignored = 0;
  readonly innerBooks: string[] = [];
  readonly passedOver: string[] = [];
  /** What has matched once is not tried again. */
  readonly idleIgnore: Map<string, (path: string) => boolean>;
  private readonly wanted: (path: string) => boolean;
  /** What is wanted goes by the names of pictures alone: nobody said otherwise. */
  private readonly takesAll: boolean;
  private readonly unwanted: (path: string) => boolean;
  /** Real paths of folders that a link led into: each is entered so once, or links among folders would multiply. */
  private readonly linkedInto = new Set<string>();

  constructor(
    private readonly options: DiscoverOptions,
    private readonly tree: Tree,
  ) {
    const { pictures, ignore } = options.settings;
    this.wanted = options.wanted ?? (pictures ? matcher(pictures) : namesPicture);
    this.takesAll = !options.wanted && !pictures;
    this.unwanted = matcher(ignore);
    this.idleIgnore = new Map(ignore.map(pattern => [pattern, matcher([pattern.replace(/^!/, '')])]));
  }

  /** A path that a person named. */
  async take(file: string): Promise<void> {
    const relative = this.relative(file);
    const seen = await this.tree.look(relative);
    if (seen?.kind === 'folder')
      await this.search({ file, relative, chain: [seen.real] }, await this.ignoredAbove(relative));
    else if (seen) this.add(relative, file, seen.kind === 'obstacle' ? seen.why : null);
  }

  private async search({ file: folder, relative, chain }: Folder, above: Ignored): Promise<void> {
    this.options.signal?.throwIfAborted();
    const ignored = above.with(relative, await this.tree.ignoreTexts(relative));
    let entries: Listed[];
    try {
      entries = await this.tree.list(relative);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      this.notEntered.push({
        path: relative || '.',
        why: code === 'EACCES' ? 'you may not read this folder' : `it cannot be read (${code})`,
      });
      return;
    }
    for (const entry of entries.sort((x, y) => compare(x.name, y.name))) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const file = path.join(folder, entry.name);
      const below = relative ? `${relative}/${entry.name}` : entry.name;
      if (relative && entry.name === SETTINGS_FILE) this.innerBooks.push(relative);
      this.tickOff(below);
      if (this.unwanted(below)) continue;
      if (entry.kind === 'folder') {
        const inner = {
          file,
          relative: below,
          chain: [...chain, path.posix.join(chain.at(-1)!, entry.name)],
        };
        if (!ignored.has(below, true)) await this.search(inner, ignored);
      } else if (entry.kind === 'link') await this.follow({ file, relative: below, chain }, ignored);
      else if (this.wanted(below)) {
        if (ignored.has(below, false)) this.ignored++;
        else this.add(below, file, entry.kind === 'file' ? null : await this.obstacle(below));
      } else if (this.takesAll && isPassedOver(below) && !ignored.has(below, false))
        this.passedOver.push(below);
    }
  }

  private tickOff(path: string): void {
    for (const [pattern, names] of this.idleIgnore) if (names(path)) this.idleIgnore.delete(pattern);
  }

  private async follow({ file, relative, chain }: Folder, ignored: Ignored): Promise<void> {
    const seen = await this.tree.look(relative);
    if (!seen || ignored.has(relative, seen.kind === 'folder')) return;
    if (seen.kind === 'folder') {
      if (chain.includes(seen.real) || this.linkedInto.has(seen.real)) return;
      this.linkedInto.add(seen.real);
      await this.search({ file, relative, chain: [...chain, seen.real] }, ignored);
    } else if (this.wanted(relative)) this.add(relative, file, seen.kind === 'obstacle' ? seen.why : null);
    else if (seen.kind === 'obstacle' && seen.why.reason === 'outside')
      this.notEntered.push({ path: relative, why: "it is a link that leads out of the book's folder" });
  }

  private async obstacle(relative: string): Promise<Unreadable | null> {
    const seen = await this.tree.look(relative);
    return seen?.kind === 'obstacle' ? seen.why : null;
  }

  private add(relative: string, file: string, obstacle: Unreadable | null): void {
    this.files.set(relative, { path: relative, file, obstacle });
  }

  private relative(file: string): string {
    return relativeTo(this.options.root, file);
  }

  /** The ignore files of the folders between the root and a folder that is searched by name. */
  private async ignoredAbove(relative: string): Promise<Ignored> {
    let ignored = Ignored.none;
    const steps = relative.split('/').filter(Boolean);
    for (let depth = 0; depth < steps.length; depth++) {
      const above = steps.slice(0, depth).join('/');
      ignored = ignored.with(above, await this.tree.ignoreTexts(above));
    }
    return ignored;
  }
}

/** By code unit, never by locale: two machines must sort alike. */
export const compare = (x: string, y: string): number => (x < y ? -1 : x > y ? 1 : 0);
const byPath = (x: { path: string }, y: { path: string }) => compare(x.path, y.path);
