import fs from 'node:fs';
import path from 'node:path';
import type { Content, Stretch } from '../../shared/reader-protocol';
import { askGit, GitError, NotInCloneError } from './git';
import type { Repository } from './repository';
import { noRoom } from './temporary';

/** Bytes that git unpacks at a time: a temporary folder may be small. */
const PORTION = 16 << 20;
/** So many portions lie there before another is unpacked ahead of those who ask for it. */
const AHEAD = 2;

/** A content by what git calls it, with its bytes and whose it is. */
export interface Sized {
  oid: string;
  size: number;
  path: string;
}

/** Some contents, one after the other in one file. */
interface Portion {
  /** Which of them it is, from 0. */
  number: number;
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
  readonly #folder: string;
  readonly #closing = new AbortController();
  readonly #signal: AbortSignal;
  /** Portions that are unpacked, or being so, and still wanted. */
  #there = 0;

  /**
   * @param contents in the order in which they will be asked for, each once
   * @param folder a temporary one, whoever made it removes it
   */
  constructor(
    private readonly repository: Pick<Repository, 'root' | 'env'>,
    contents: readonly Sized[],
    { folder, signal }: { folder: string; signal?: AbortSignal },
  ) {
    this.#folder = folder;
    this.#signal = AbortSignal.any([this.#closing.signal, ...(signal ? [signal] : [])]);
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
    if (this.#there < AHEAD) this.#begin(this.#portions[portion.number + 1]);
    try {
      return await use({ file: portion.file, stretch: stretches.get(oid) });
    } finally {
      if (--portion.wanted === 0) {
        fs.rmSync(portion.file, { force: true });
        this.#there--;
      }
    }
  }

  async close(): Promise<void> {
    this.#closing.abort();
    await Promise.allSettled(this.#portions.map(({ unpacked }) => unpacked));
  }

  #portion(): Portion {
    const number = this.#portions.length;
    return {
      ...{ number, contents: [], wanted: 0, unpacked: null },
      file: path.join(this.#folder, `portion-${number}`),
    };
  }

  #begin(portion: Portion | undefined): Portion['unpacked'] {
    if (!portion || portion.unpacked) return portion?.unpacked ?? null;
    this.#there++;
    const unpacked = unpack(this.repository, portion, this.#signal);
    // whoever asks for one of them is told
    unpacked.catch(() => {});
    portion.unpacked = unpacked;
    return unpacked;
  }
}

/** Has git write one content into a new file. @throws GitError */
export async function unpackInto(
  { root, env }: Pick<Repository, 'root' | 'env'>,
  { oid }: Pick<Sized, 'oid'>,
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
  } catch (error) {
    throw error instanceof GitError && isFull(path.dirname(file)) ? noRoom() : error;
  } finally {
    fs.closeSync(opened);
  }
}

/** Git does not say that this is why it could not write. */
function isFull(folder: string): boolean {
  const { bavail, bsize } = fs.statfsSync(folder);
  return bavail * bsize < ALMOST_NOTHING;
}

const ALMOST_NOTHING = 1 << 20;

/** Before each content git says in a line what it is, and ends the line of its last byte after it. */
function stretchesIn(opened: number, contents: readonly Sized[]): Map<string, Stretch> {
  const stretches = new Map<string, Stretch>();
  let at = 0;
  for (const { oid, size, path } of contents) {
    const line = Buffer.from(`${oid} blob ${size}\n`);
    const told = Buffer.alloc(line.length);
    fs.readSync(opened, told, 0, told.length, at);
    if (told.toString().startsWith(`${oid} missing`)) throw new NotInCloneError(path);
    if (!told.equals(line)) throw new GitError(`git gave something else than the ${size} bytes of ${oid}.`);
    stretches.set(oid, { start: at + line.length, size });
    at += line.length + size + 1;
  }
  return stretches;
}
