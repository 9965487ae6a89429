// no-unit-test: test/remedy/batch.test.ts goes through every way of it
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import { hashOf } from '../book/hash';
import { Lines } from './keep/journal';
import type { Existing } from './plan/existing';

/** A result as it was written. */
export interface Made {
  /** Its name in its folder. */
  name: string;
  /** SHA-256 of the picture and of the result. */
  from: string;
  to: string;
  /** The picture, absolute. */
  source: string;
  wish: string;
  /** SHA-256 of the earlier result that it was written over; left out or null: there was none. */
  replaces?: string | null;
}

const isMade = (value: unknown): boolean => {
  const { name, from, to, source, wish } = (value ?? {}) as Partial<Made>;
  return [name, from, to, source, wish].every(text => typeof text === 'string');
};

/**
 * Remembers in the user's cache folder which results were written, folder by folder, so that an old result of a changed
 * picture can be told from a file that somebody has worked on since. Without it nothing is lost: then the file is left
 * alone.
 */
export class Results {
  private readonly lists = new Map<string, Lines<Made>>();

  /** @param memory the user's cache folder */
  constructor(private readonly memory: string) {}

  async remember(output: string, made: Omit<Made, 'name'>): Promise<void> {
    try {
      await fs.mkdir(path.join(this.memory, 'results'), { recursive: true });
      await this.listOf(output).add({ name: path.basename(output), ...made });
    } catch {
      // the result itself stands
    }
  }

  /** What there is under the name of a result. */
  async at(output: string): Promise<Existing> {
    const stat = await fs.lstat(output).catch(() => null);
    if (!stat) return { kind: 'nothing' };
    if (!stat.isFile()) return { kind: 'no-file' };
    const sha256 = await hashOf(output);
    const name = path.basename(output);
    const list = await this.listOf(output).read();
    const made = list.findLast(each => each.name === name && each.to === sha256) ?? null;
    return { kind: 'file', sha256, made };
  }

  /** A result had this name once, whatever is there now. */
  async had(output: string): Promise<boolean> {
    const name = path.basename(output);
    return (await this.listOf(output).read()).some(each => each.name === name);
  }

  private listOf(output: string): Lines<Made> {
    const folder = path.dirname(output);
    const file = createHash('sha256').update(folder).digest('hex').slice(0, 32);
    const list = this.lists.get(folder) ?? new Lines<Made>(path.join(this.memory, 'results', file), isMade);
    this.lists.set(folder, list);
    return list;
  }
}
