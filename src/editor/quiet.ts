/** Quiet time after a change before the book is read again, and the longest that changes may put it off, in ms. */
const QUIET_MS = 120;
const LONGEST_MS = 2000;
/** Time without a change after which the next one is no part of what went before. */
const CALM_MS = 500;
/** What one message of the watcher tells comes within this. */
const TOGETHER_MS = 5;
/** Files that one save may touch: the picture, a temporary one and a backup. */
const ONE_SAVE = 3;

/**
 * How long to wait for more changes. A picture that is saved while all is calm is judged at once; many changes, such as
 * of a checkout, and a file that is written in pieces wait until they are over. Times in ms, of one clock.
 */
export class Quiet {
  #first = 0;
  #last = Number.NEGATIVE_INFINITY;
  #files = new Set<string>();
  #afterCalm = false;

  /** Takes note of a change and says how long to wait from `now` on. `file`: null where nobody knows which. */
  changed(now: number, file: string | null): number {
    if (!this.#files.size) {
      this.#first = now;
      this.#afterCalm = file !== null && now - this.#last >= CALM_MS;
    }
    this.#last = now;
    this.#files.add(file ?? '');
    const isOneSave = this.#afterCalm && this.#files.size <= ONE_SAVE;
    if (isOneSave) return Math.max(0, this.#first + TOGETHER_MS - now);
    return Math.max(0, Math.min(QUIET_MS, this.#first + LONGEST_MS - now));
  }

  /** The waiting is over: the next change begins another. */
  over(): void {
    this.#files.clear();
  }
}
