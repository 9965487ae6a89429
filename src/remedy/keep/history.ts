import path from 'node:path';
import { isWithin } from '../../book/settings/within';
import type { Entry } from './journal';
import { journalOf, type Keep, keepsAbove, pathIn } from './place';

/** Something that a journal says, and whose journal it is. */
export interface Known {
  keep: Keep;
  entry: Entry;
}

interface Told {
  keep: Keep;
  /** What was last done at a path. */
  last: Map<string, Entry>;
  /** What a result, by its hash, took the place of; the latest last. */
  results: Map<string, Entry[]>;
  sizes: Set<number>;
  /** Where originals, by their hash, were brought back that had been replaced at another path. */
  elsewhere: Map<string, Set<string>>;
}

/** What the journals above files say of them. Each is read once. */
export class History {
  private readonly journals = new Map<string, Promise<Told>>();
  private readonly above = new Map<string, Promise<Told[]>>();

  /**
   * What a conversion in place made of content `sha256`, at this path or, where the file was moved, at another. One that
   * was taken back at that other path left nothing to move: the same content here was made in another way.
   */
  async resultAt(file: string, sha256: string): Promise<Known | null> {
    const told = await this.of(path.dirname(file));
    const found = told.flatMap(({ keep, results, last }) =>
      (results.get(sha256) ?? [])
        .filter(({ path: at }) => at === pathIn(keep, file) || last.get(at)?.event !== 'restored')
        .map(entry => ({ keep, entry })),
    );
    return found.findLast(({ keep, entry }) => entry.path === pathIn(keep, file)) ?? found.at(-1) ?? null;
  }

  /** What was last done at this path. */
  async lastAt(file: string): Promise<Known | null> {
    for (const { keep, last } of await this.of(path.dirname(file))) {
      const entry = last.get(pathIn(keep, file));
      if (entry) return { keep, entry };
    }
    return null;
  }

  /**
   * What was last done at each of these paths, where nothing is any more, unless the original was brought back, here or
   * elsewhere. Of pictures that were alike each counts by itself: one that was brought back answers for one.
   * @param moved hashes of originals that are brought back at other paths just now
   */
  async lostFrom(
    files: readonly string[],
    moved: readonly string[],
  ): Promise<{ file: string; last: Known }[]> {
    const lost: { file: string; last: Known }[] = [];
    const back = new Map<string, number>();
    for (const file of files) {
      const last = await this.lastAt(file);
      if (!last || last.entry.event === 'restored') continue;
      const { from } = last.entry;
      const before = (await this.of(path.dirname(file))).map(told => told.elsewhere.get(from)?.size ?? 0);
      const left =
        back.get(from) ??
        before.reduce((sum, count) => sum + count, 0) + moved.filter(each => each === from).length;
      back.set(from, left - 1);
      if (left <= 0) lost.push({ file, last });
    }
    return lost;
  }

  /** Whether it is worth hashing a file to ask for it. */
  async mayKnow(file: string, bytes: number): Promise<boolean> {
    const told = await this.of(path.dirname(file));
    return told.some(({ keep, last, sizes }) => sizes.has(bytes) || last.has(pathIn(keep, file)));
  }

  /** Every path in or at `named` (absolute) that something was done at. */
  async pathsIn(named: string): Promise<string[]> {
    const told = await this.of(named);
    const all = told.flatMap(({ keep, last }) => [...last.keys()].map(at => path.join(keep.top, at)));
    return [...new Set(all)].filter(file => isWithin(named, file));
  }

  private of(folder: string): Promise<Told[]> {
    const known = this.above.get(folder);
    if (known) return known;
    const told = keepsAbove(folder).then(keeps => Promise.all(keeps.map(keep => this.read(keep))));
    this.above.set(folder, told);
    return told;
  }

  private read(keep: Keep): Promise<Told> {
    const key = `${keep.folder}\0${keep.top}`;
    const known = this.journals.get(key);
    if (known) return known;
    const told = readOf(keep);
    this.journals.set(key, told);
    return told;
  }
}

async function readOf(keep: Keep): Promise<Told> {
  const told: Told = { keep, last: new Map(), results: new Map(), sizes: new Set(), elsewhere: new Map() };
  const replaced = new Set<string>();
  for (const entry of await journalOf(keep).read()) {
    told.last.set(entry.path, entry);
    told.sizes.add(entry.bytes);
    const deed = `${entry.from} ${entry.path}`;
    if (entry.event === 'restored' && !replaced.has(deed))
      told.elsewhere.set(entry.from, (told.elsewhere.get(entry.from) ?? new Set()).add(entry.path));
    if (entry.event === 'replacing') {
      replaced.add(deed);
      const entries = told.results.get(entry.to) ?? [];
      told.results.set(entry.to, [...entries, entry]);
    }
  }
  return told;
}
