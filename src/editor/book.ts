import * as vscode from 'vscode';
import type { CheckAnswer, Progress } from '../shared/checker-protocol';
import { Cancelled, type CheckerClient } from './checker-client';

/** Quiet time after a change before the book is read again, and the longest that changes may put it off. */
const QUIET_MS = 120;
const LONGEST_MS = 2000;

export type BookState =
  | { kind: 'checking'; progress: Progress | null }
  | { kind: 'checked'; answer: CheckAnswer }
  | { kind: 'failed'; message: string };

/** A folder with an `evengrey.json`: checked when it opens and after every change. */
export class Book {
  readonly #changed = new vscode.EventEmitter<Book>();
  readonly onDidChange = this.#changed.event;
  state: BookState = { kind: 'checking', progress: null };
  /** The last whole answer: what is shown while the next is made. */
  answer: CheckAnswer | undefined;

  #generation = 0;
  #running: AbortController | undefined;
  #timer: NodeJS.Timeout | undefined;
  #firstChange = 0;

  constructor(
    /** The folder of `evengrey.json`. */
    readonly root: vscode.Uri,
    private readonly checker: CheckerClient,
  ) {}

  get settings(): vscode.Uri {
    return vscode.Uri.joinPath(this.root, 'evengrey.json');
  }

  contains(file: vscode.Uri): boolean {
    return file.scheme === this.root.scheme && file.path.startsWith(`${this.root.path}/`);
  }

  /** Something in the folder changed: check soon. Many changes at once are one. */
  touch() {
    const now = Date.now();
    if (!this.#timer) this.#firstChange = now;
    clearTimeout(this.#timer);
    const wait = Math.max(0, Math.min(QUIET_MS, this.#firstChange + LONGEST_MS - now));
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      void this.check();
    }, wait);
  }

  /**
   * Checks now; a check that is under way is given up, what it has read is kept by the checker's cache. Never throws:
   * a failure is a state.
   */
  async check(onProgress?: (progress: Progress) => void, token?: vscode.CancellationToken): Promise<void> {
    const generation = ++this.#generation;
    this.#running?.abort();
    const running = new AbortController();
    this.#running = running;
    const cancel = token?.onCancellationRequested(() => running.abort());
    const set = (state: BookState) => {
      if (generation !== this.#generation) return;
      this.state = state;
      if (state.kind === 'checked') this.answer = state.answer;
      this.#changed.fire(this);
    };

    set({ kind: 'checking', progress: null });
    try {
      const answer = await this.checker.ask(
        'check',
        { root: this.root.fsPath },
        {
          signal: running.signal,
          onProgress: progress => {
            onProgress?.(progress);
            set({ kind: 'checking', progress });
          },
        },
      );
      set({ kind: 'checked', answer });
    } catch (error) {
      if (error instanceof Cancelled) {
        if (this.answer) set({ kind: 'checked', answer: this.answer });
      } else set({ kind: 'failed', message: (error as Error).message });
    } finally {
      cancel?.dispose();
    }
  }

  dispose() {
    this.#generation++;
    clearTimeout(this.#timer);
    this.#running?.abort();
    this.#changed.dispose();
  }
}
