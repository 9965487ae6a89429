import fs from 'node:fs/promises';
import { line, spans, textAt } from '../../book/cache/lines';
import { flushFile } from './flush';

/** A line of the journal. A line is written before the deed and one after it. */
export interface Entry {
  event: 'replacing' | 'replaced' | 'restoring' | 'restored';
  /** The picture, relative to the keep's top, forward slashes. */
  path: string;
  /** SHA-256 of the original and of what takes or took its place, hex. */
  from: string;
  to: string;
  /** How many bytes `to` has. */
  bytes: number;
  /** Permission bits of the original. */
  mode: number;
  /** When the original was last changed, in ms since 1970; left out in journals of before. */
  modified?: number;
  /** What was asked for, by its key: the same again is done already. */
  wish: string;
  /** ISO 8601, for people. */
  at: string;
}

/** A list of records in a file that only grows, each line whole or nothing. */
export class Lines<Record extends object> {
  private last: Promise<void> = Promise.resolve();

  constructor(
    private readonly file: string,
    private readonly isRecord: (value: unknown) => boolean,
  ) {}

  /** What was written whole, oldest first; nothing where there is no file. */
  async read(): Promise<Record[]> {
    const bytes = await fs.readFile(this.file).catch(() => Buffer.alloc(0));
    return [...spans(bytes)].flatMap(span => {
      const text = textAt(bytes, span);
      const value = text === null ? null : parsed(text);
      return this.isRecord(value) ? [value as Record] : [];
    });
  }

  /** Adds a record and waits until it is on the disk. @throws what the file system says */
  add(record: Record): Promise<void> {
    const added = this.last.then(() => this.append(line(JSON.stringify(record))));
    this.last = added.catch(() => {});
    return added;
  }

  private async append(text: string): Promise<void> {
    const handle = await fs.open(this.file, 'a+');
    try {
      // what a kill or a full disk tore must not spoil the line that follows it
      const { size } = await handle.stat();
      const { buffer } = size
        ? await handle.read(Buffer.alloc(1), 0, 1, size - 1)
        : { buffer: Buffer.from('\n') };
      await handle.writeFile(buffer[0] === 0x0a ? text : `\n${text}`);
    } finally {
      await handle.close();
    }
    await flushFile(this.file);
  }
}

const HASH = /^[0-9a-f]{64}$/;
const EVENTS: unknown[] = ['replacing', 'replaced', 'restoring', 'restored'] satisfies Entry['event'][];

export const journal = (file: string) =>
  new Lines<Entry>(file, value => {
    const { event, path, from, to, bytes, mode, modified = 0, wish } = (value ?? {}) as Partial<Entry>;
    return (
      EVENTS.includes(event) &&
      [path, wish].every(text => typeof text === 'string') &&
      [from, to].every(hash => typeof hash === 'string' && HASH.test(hash)) &&
      [bytes, mode].every(Number.isInteger) &&
      Number.isFinite(modified)
    );
  });

/** For a line's `at`. */
export const now = () => new Date().toISOString();

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
