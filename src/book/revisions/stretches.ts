import fs from 'node:fs';
import path from 'node:path';
import type { Content, Stretch } from '../../shared/reader-protocol';
import { askGit, GitError } from './git';
import type { Repository } from './repository';

/** Bytes that git unpacks at a time. Twice as many lie there at most: those that are read, and those that come next. */
const PORTION = 64 << 20;

/** A content by what git calls it, and its bytes. */
export interface Sized {
  oid: string;
  size: number;
}

/** Some contents, one after the other in one file. */
interface Portion {
  contents: Sized[];
  file: string;
  unpacked: Promise<ReadonlyMap<string, Stretch>> | null;
  /** How many of them are still wanted. */
  wanted: number;
}

/**
 * Contents from git's object store, unpacked ahead of those who read them. Git itself writes them into a file, so that they
 * pass through no pipe, and through this process not at all. Close it when done, before the folder goes.
 */
export class Stretches {
  readonly #portions: Portion[] = [];
  readonly #portionOf = new Map<string, Portion>();
  readonly #closing = new AbortController();

  /**
   * @param contents in the order in which they will be asked for, each once
   * @param folder a temporary one, whoever made it removes it
   */
  constructor(
    private readonly repository: Pick<Repository, 'root' | 'env'>,
    contents: readonly Sized[],
    private readonly folder: string,
  ) {
    let filled = PORTION;
    for (const content of contents) {
      if (filled + content.size > PORTION) {
        this.#portions.push(this.#portion());
        filled = 0;
      }
      const portion = this.#portions.at(-1)!;
      portion.contents.push(content);
      portion.wanted++;
      filled += content.size;
      this.#portionOf.set(content.oid, portion);
    }
    this.#begin(this.#portions[0]);
  }

  /** Hands one of them over for as long as `use` takes, once. @throws GitError */
  async take<T>(oid: string, use: (content: Content) => Promise<T>): Promise<T> {
    const portion = this.#portionOf.get(oid)!;
    const stretches = await this.#begin(portion)!;
    this.#begin(this.#portions[this.#portions.indexOf(portion) + 1]);
    try {
      return await use({ file: portion.file, stretch: stretches.get(oid) });
    } finally {
      if (--portion.wanted === 0) fs.rmSync(portion.file, { force: true });
    }
  }

  async close(): Promise<void> {
    this.#closing.abort();
    await Promise.allSettled(this.#portions.map(({ unpacked }) => unpacked));
  }

  #portion(): Portion {
    const file = path.join(this.folder, `portion-${this.#portions.length}`);
    return { contents: [], file, unpacked: null, wanted: 0 };
  }

  #begin(portion: Portion | undefined): Portion['unpacked'] {
    if (!portion || portion.unpacked) return portion?.unpacked ?? null;
    const unpacked = unpack(this.repository, portion, this.#closing.signal);
    // whoever asks for one of them is told
    unpacked.catch(() => {});
    portion.unpacked = unpacked;
    return unpacked;
  }
}

/** Has git write one content into a new file. @throws GitError */
export async function unpackInto(
  { root, env }: Pick<Repository, 'root' | 'env'>,
  oid: string,
  file: string,
  signal?: AbortSignal,
): Promise<void> {
  await written(file, into => askGit(root, ['cat-file', 'blob', oid], { env, into, signal }));
}

async function unpack(
  { root, env }: Pick<Repository, 'root' | 'env'>,
  { contents, file }: Portion,
  signal: AbortSignal,
): Promise<ReadonlyMap<string, Stretch>> {
  const input = contents.map(({ oid }) => `${oid}\n`).join('');
  return written(file, async into => {
    await askGit(root, ['cat-file', '--batch', '--buffer'], { env, input, into, signal });
    return stretchesIn(into, contents);
  });
}

async function written<T>(file: string, write: (into: number) => Promise<T>): Promise<T> {
  const opened = fs.openSync(file, 'wx+', 0o600);
  try {
    return await write(opened);
  } finally {
    fs.closeSync(opened);
  }
}

/** Before each content git says in a line what it is, and ends the line of its last byte after it. */
function stretchesIn(opened: number, contents: readonly Sized[]): Map<string, Stretch> {
  const stretches = new Map<string, Stretch>();
  let at = 0;
  for (const { oid, size } of contents) {
    const line = Buffer.from(`${oid} blob ${size}\n`);
    const told = Buffer.alloc(line.length);
    fs.readSync(opened, told, 0, told.length, at);
    if (!told.equals(line)) throw new GitError(`git gave something else than the ${size} bytes of ${oid}.`);
    stretches.set(oid, { start: at + line.length, size });
    at += line.length + size + 1;
  }
  if (fs.fstatSync(opened).size !== at) throw new GitError('git ended in the middle of a content.');
  return stretches;
}
