import path from 'node:path';
import { hashOf } from '../../book/hash';
import type { Pool } from '../../book/pool';
import { SMALL } from '../../report/page/shown';
import type { PictureReport } from '../../shared/finding';
import type { SmallPicture } from '../../shared/reader-protocol';

/** Enough for some thousand pictures; those that were not seen for longest go first. */
const MOST_BYTES = 96 * 1024 * 1024;

type Small = { small: SmallPicture } | { trouble: string };

/** Small pictures of what was checked, by content: none is decoded twice. */
export class SmallPictures {
  readonly #kept = new Map<string, SmallPicture>();
  #bytes = 0;

  constructor(
    private readonly pool: Pick<Pool, 'small'>,
    private readonly mostBytes = MOST_BYTES,
  ) {}

  /**
   * A picture of the book at `root` (absolute), or why it cannot be shown.
   * @throws the signal's reason when cancelled
   */
  async of(root: string, { path: name, facts }: PictureReport, signal: AbortSignal): Promise<Small> {
    if (facts.unreadable) return { trouble: facts.unreadable.text };
    const key = `${facts.sha256} ${facts.page}`;
    const known = this.#kept.get(key);
    if (known) {
      this.#kept.delete(key);
      this.#kept.set(key, known);
      return { small: known };
    }
    const file = path.join(root, name);
    try {
      const [small] = await this.pool.small(file, facts.page, [SMALL], signal);
      // it was saved meanwhile: the check that follows asks again
      if ((await hashOf(file, signal)) === facts.sha256) this.#keep(key, small);
      return { small };
    } catch (error) {
      signal.throwIfAborted();
      return { trouble: error instanceof Error ? error.message : String(error) };
    }
  }

  #keep(key: string, small: SmallPicture) {
    this.#kept.set(key, small);
    this.#bytes += small.bytes.byteLength;
    for (const [oldest, { bytes }] of this.#kept) {
      if (this.#bytes <= this.mostBytes) return;
      this.#kept.delete(oldest);
      this.#bytes -= bytes.byteLength;
    }
  }
}
