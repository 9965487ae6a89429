import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import type { PictureFacts } from '../../shared/picture';
import { line, spans, textAt } from './lines';
import { makeFolder } from './make-folder';
import { isSettled, type Stamp, sameStamp } from './stamp';

/** Replaced or unused records may fill so much of the file before it is written anew. */
const MOST_WASTE = 0.5;
const SMALL = 1024 * 1024;
const DAY = 24 * 60 * 60 * 1000;
const UNUSED_DAYS = 60;

interface Known extends Stamp {
  sha256: string;
  /** False: size and times may hide a later change, so the content has to be hashed again. */
  settled: boolean;
}

/** A record of facts: bytes of the file as it was read, or a line that is not written yet. */
type Record = ({ start: number; end: number } | { text: string }) & { pages?: PictureFacts[] };

/**
 * The facts of one book's pictures, by content, with an index from path and stamp to content. One file a book and
 * version of the facts: lines are added at its end, and now and then it is written anew beside itself and renamed, so
 * that processes at work on one book never see half a file. It is only a cache: whatever is wrong with it, the
 * pictures are read again.
 */
export class FactsCache {
  /** Why the cache could not be kept; null as long as all is well. */
  trouble: string | null = null;
  private bytes = Buffer.alloc(0);
  /** Bytes in the file, as far as this process knows. */
  private size = 0;
  private readonly known = new Map<string, Known>();
  private readonly records = new Map<string, Record>();
  private readonly sizes = new Set<number>();
  /** Names of the pixels of a content's pages, by its hash. */
  private readonly pixelNames = new Map<string, (string | null)[]>();
  /** Contents of git's object store, by their name there. */
  private readonly blobs = new Map<string, string>();
  /** Those that were asked for since this cache was opened: the others go when the file is next written anew. */
  private readonly usedBlobs = new Set<string>();
  private added: string[] = [];

  private constructor(private readonly file: string) {}

  /**
   * @param folder the user's cache folder
   * @param version what the facts were made by: other versions keep their own file
   */
  static async open(folder: string, root: string, version: string): Promise<FactsCache> {
    const books = path.join(folder, 'books');
    const name = createHash('sha256')
      .update(await fs.realpath(root))
      .digest('hex')
      .slice(0, 24);
    const cache = new FactsCache(path.join(books, `${name}-${version.slice(0, 12)}.jsonl`));
    await cache.load();
    return cache;
  }

  /** What is known of the file at `file` (relative to the root) with this stamp. */
  lookUp(file: string, stamp: Stamp): { sha256: string; settled: boolean } | null {
    const known = this.known.get(file);
    return known && sameStamp(known, stamp) ? known : null;
  }

  /** Something is known of the file, by whatever stamp. */
  knowsFile(file: string): boolean {
    return this.known.has(file);
  }

  /** Some known content has this size, so hashing may spare a reading: the file was moved, copied or touched. */
  knowsSize(size: number): boolean {
    return this.sizes.has(size);
  }

  /** Facts of all pages of a content; the same objects each time, so that what was worked out from them can be kept. */
  facts(sha256: string): PictureFacts[] | null {
    const record = this.records.get(sha256);
    if (!record) return null;
    const text = record.pages || 'text' in record ? null : textAt(this.bytes, record);
    if (text) record.pages = JSON.parse(text)[2];
    if (!record.pages) this.records.delete(sha256);
    return record.pages ?? null;
  }

  /** Keeps what was read. `stamp` was taken before the reading began at `readAt` and again after it, unchanged. */
  remember(file: string, stamp: Stamp, readAt: bigint, sha256: string, facts: PictureFacts[] | null): void {
    const known = { ...stamp, sha256, settled: isSettled(stamp, readAt) };
    this.known.set(file, known);
    this.sizes.add(stamp.size);
    this.added.push(indexText(file, known));
    this.keep(sha256, facts);
  }

  private keep(sha256: string, facts: PictureFacts[] | null): void {
    if (!facts || this.records.has(sha256)) return;
    const text = JSON.stringify(['facts', sha256, facts]);
    this.records.set(sha256, { text, pages: facts });
    this.added.push(text);
  }

  /** Facts of what git calls `oid`. */
  blobFacts(oid: string): PictureFacts[] | null {
    const sha256 = this.blobs.get(oid);
    if (sha256 === undefined) return null;
    this.usedBlobs.add(oid);
    return this.facts(sha256);
  }

  /** Keeps what was read of what git calls `oid`; `facts` null: they are known already. */
  rememberBlob(oid: string, sha256: string, facts: PictureFacts[] | null): void {
    this.usedBlobs.add(oid);
    if (this.blobs.get(oid) !== sha256) {
      this.blobs.set(oid, sha256);
      this.added.push(blobText(oid, sha256));
    }
    this.keep(sha256, facts);
  }

  /** Names of the pixels of all pages of a content, where they were ever asked for. */
  pixels(sha256: string): (string | null)[] | null {
    return this.pixelNames.get(sha256) ?? null;
  }

  rememberPixels(sha256: string, names: (string | null)[]): void {
    this.pixelNames.set(sha256, names);
    this.added.push(pixelText(sha256, names));
  }

  /** Forgets the files that the book no longer holds; their facts go when the file is next written anew. */
  retain(files: Iterable<string>): void {
    const kept = new Set(files);
    for (const file of this.known.keys()) if (!kept.has(file)) this.known.delete(file);
  }

  /** Writes what was added. Never throws: what went wrong stands in `trouble`. */
  async save(): Promise<void> {
    if (!this.added.length) return;
    // the line break ends a line that somebody's kill left open
    const addition = Buffer.from(`\n${this.added.map(line).join('')}`);
    this.added = [];
    try {
      if (this.size && !this.isWasteful()) {
        await fs.appendFile(this.file, addition);
        this.size += addition.length;
      } else await this.writeAnew();
    } catch (error) {
      this.trouble = `${this.file}: ${(error as Error).message}`;
    }
  }

  private async load(): Promise<void> {
    try {
      this.bytes = await fs.readFile(this.file);
      const { mtimeMs } = await fs.stat(this.file);
      if (Date.now() - mtimeMs > DAY) await fs.utimes(this.file, new Date(), new Date());
    } catch {
      return; // none yet, or none that can be read
    }
    this.size = this.bytes.length;
    for (const span of spans(this.bytes)) {
      const isFacts = this.bytes.toString('latin1', span.start, span.start + FACTS.length) === FACTS;
      if (isFacts) {
        const from = span.start + FACTS.length;
        this.records.set(this.bytes.toString('latin1', from, from + 64), span);
      } else this.index(textAt(this.bytes, span));
    }
  }

  private index(text: string | null): void {
    if (text === null) return;
    const entry = JSON.parse(text);
    if (entry[0] === 'blob') {
      this.blobs.set(entry[1], entry[2]);
      return;
    }
    if (entry[0] === 'pixels') {
      this.pixelNames.set(entry[1], entry[2]);
      return;
    }
    const [, file, size, mtime, ctime, inode, sha256, settled] = entry;
    const stamp = { size, mtime: BigInt(mtime), ctime: BigInt(ctime), inode: BigInt(inode) };
    this.known.set(file, { ...stamp, sha256, settled });
    this.sizes.add(size);
  }

  private usedRecords(): Map<string, Record> {
    const used = new Map<string, Record>();
    const blobs = [...this.usedBlobs].map(oid => this.blobs.get(oid)!);
    for (const sha256 of [...[...this.known.values()].map(known => known.sha256), ...blobs]) {
      const record = this.records.get(sha256);
      if (record) used.set(sha256, record);
    }
    return used;
  }

  private isWasteful(): boolean {
    if (this.size < SMALL) return false;
    let used = 0;
    for (const record of this.usedRecords().values())
      used += 'text' in record ? record.text.length : record.end - record.start;
    return used < this.size * (1 - MOST_WASTE);
  }

  private async writeAnew(): Promise<void> {
    const folder = path.dirname(this.file);
    await makeFolder(folder);
    const texts = [...this.known].map(([file, known]) => indexText(file, known));
    for (const oid of this.usedBlobs) texts.push(blobText(oid, this.blobs.get(oid)!));
    const used = this.usedRecords();
    for (const [sha256, names] of this.pixelNames) if (used.has(sha256)) texts.push(pixelText(sha256, names));
    for (const record of used.values()) {
      const text = 'text' in record ? record.text : textAt(this.bytes, record);
      if (text) texts.push(text);
    }
    const beside = `${this.file}.${process.pid}.tmp`;
    const content = Buffer.from(texts.map(line).join(''));
    await fs.writeFile(beside, content);
    await fs.rename(beside, this.file);
    this.size = content.length;
    await sweep(folder);
  }
}

const FACTS = '["facts","';

const pixelText = (sha256: string, names: (string | null)[]) => JSON.stringify(['pixels', sha256, names]);

const blobText = (oid: string, sha256: string) => JSON.stringify(['blob', oid, sha256]);

const indexText = (file: string, known: Known) =>
  JSON.stringify([
    'file',
    file,
    known.size,
    String(known.mtime),
    String(known.ctime),
    String(known.inode),
    known.sha256,
    known.settled,
  ]);

/** Lets go of books and versions that nobody used for two months. */
async function sweep(folder: string): Promise<void> {
  for (const name of await fs.readdir(folder)) {
    const file = path.join(folder, name);
    const stat = await fs.stat(file).catch(() => null);
    if (stat && Date.now() - stat.mtimeMs > UNUSED_DAYS * DAY) await fs.rm(file, { force: true });
  }
}
