import type { ChildProcessWithoutNullStreams } from 'node:child_process';
import path from 'node:path';
import { GitError, NotInCloneError, notStarted, startGit } from './git';
import { contentHeld } from './hash';
import type { Repository } from './repository';

/**
 * Contents straight from git's object store, one after the other through one `git cat-file --batch`: no checkout, no
 * filter, no network. What a file of the book's folder holds to the byte, git need not be asked for. Close it when done.
 */
export class Blobs {
  /** Both sides of a comparison ask for the same settings. */
  private readonly remembered = new Map<string, Buffer>();
  private child: ChildProcessWithoutNullStreams | null = null;
  private incoming: AsyncIterator<Buffer> | null = null;
  private kept: Buffer = Buffer.alloc(0);
  private turn: Promise<unknown> = Promise.resolve();
  private failure: Error | null = null;

  constructor(private readonly repository: Pick<Repository, 'root' | 'env'>) {}

  /**
   * A content of up to `most` bytes; null where it is larger. @param at whose content it is, in the book's folder
   * @throws NotInCloneError
   */
  async small(oid: string, most: number, at: string): Promise<Buffer | null> {
    const file = path.resolve(this.repository.root, at);
    const known = this.remembered.get(oid) ?? contentHeld(file, oid, most);
    if (known && known.length <= most) {
      this.remembered.set(oid, known);
      return known;
    }
    const content = await this.take<Buffer | 'passed'>(oid, size =>
      size <= most ? this.whole(size) : this.passed(size),
    );
    if (content === null) throw new NotInCloneError(at);
    if (content === 'passed') return null;
    this.remembered.set(oid, content);
    return content;
  }

  /** The first bytes of a content of any size, fewer where it has fewer. @throws NotInCloneError */
  async head(oid: string, bytes: number, at: string): Promise<Buffer> {
    const head = await this.take(oid, size => this.begun(size, bytes));
    if (head === null) throw new NotInCloneError(at);
    return head;
  }

  close(): void {
    this.child?.kill();
    this.child = null;
  }

  /** One question at a time: answers come in the order of questions. */
  private take<T>(oid: string, read: (size: number) => Promise<T>): Promise<T | null> {
    const mine = this.turn.then(async () => {
      const size = await this.ask(oid);
      return size === null ? null : read(size);
    });
    this.turn = mine.catch(() => {});
    return mine;
  }

  private async whole(size: number): Promise<Buffer> {
    const parts: Buffer[] = [];
    for await (const part of this.content(size)) parts.push(part);
    return Buffer.concat(parts);
  }

  /** The bytes go nowhere: what comes after them is waited for. */
  private async passed(size: number): Promise<'passed'> {
    for await (const _ of this.content(size));
    return 'passed';
  }

  /** The rest is waited for, and goes nowhere. */
  private async begun(size: number, bytes: number): Promise<Buffer> {
    const parts: Buffer[] = [];
    let had = 0;
    for await (const part of this.content(size)) {
      if (had < bytes) parts.push(part);
      had += part.length;
    }
    return Buffer.concat(parts).subarray(0, bytes);
  }

  /** Size of a content whose bytes follow; null where there is none. */
  private async ask(oid: string): Promise<number | null> {
    this.start();
    this.child!.stdin.write(`${oid}\n`);
    const line = await this.line();
    // of a clone without all contents: git ends rather than fetch, and is started anew for the next
    if (line === null) {
      this.close();
      if (this.failure) throw this.failure;
      return null;
    }
    const size = /^[0-9a-f]+ blob (\d+)$/.exec(line);
    return size ? Number(size[1]) : null;
  }

  private start(): void {
    if (this.child) return;
    const child = startGit(this.repository.root, ['cat-file', '--batch'], this.repository.env);
    child.on('error', error => {
      this.failure = notStarted(error);
    });
    child.stdin.on('error', () => {}); // its end is seen at the other end
    child.stderr.resume();
    this.child = child;
    this.kept = Buffer.alloc(0);
    this.incoming = child.stdout[Symbol.asyncIterator]() as AsyncIterator<Buffer>;
  }

  private async more(): Promise<Buffer | null> {
    const { value, done } = await this.incoming!.next();
    return done ? null : value;
  }

  private async line(): Promise<string | null> {
    for (let end = this.kept.indexOf(0x0a); ; end = this.kept.indexOf(0x0a)) {
      if (end !== -1) {
        const line = this.kept.toString('latin1', 0, end);
        this.kept = this.kept.subarray(end + 1);
        return line;
      }
      const part = await this.more();
      if (!part) return null;
      this.kept = Buffer.concat([this.kept, part]);
    }
  }

  /** The bytes, and the line's end that git writes after them. */
  private async *content(size: number): AsyncGenerator<Buffer> {
    let left = size + 1;
    while (left > 0) {
      const part = this.kept.length ? this.kept : await this.more();
      if (!part) throw new GitError('git ended in the middle of a content.');
      const used = part.subarray(0, left);
      this.kept = part.subarray(used.length);
      left -= used.length;
      const ofContent = left === 0 ? used.subarray(0, -1) : used;
      if (ofContent.length) yield ofContent;
    }
  }
}
