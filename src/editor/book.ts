// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { CheckAnswer, Progress } from '../shared/checker-protocol';
import { Cancelled, type CheckerClient } from './checker-client';
import { openTexts } from './layout/open-texts';
import { Quiet } from './quiet';

export type BookState =
  /** Nobody has asked for a check yet. */
  | { kind: 'unchecked' }
  | { kind: 'checking'; progress: Progress | null }
  | { kind: 'checked'; answer: CheckAnswer }
  | { kind: 'failed'; message: string };

/** A folder with an `evengrey.json`: checked when it opens and after every change. */
export class Book {
  readonly #changed = new vscode.EventEmitter<Book>();
  readonly onDidChange = this.#changed.event;
  state: BookState = { kind: 'unchecked' };
  /** The last whole answer: what is shown while the next is made. */
  answer: CheckAnswer | undefined;

  #generation = 0;
  #latest: Promise<void> | undefined;
  #running: AbortController | undefined;
  #timer: NodeJS.Timeout | undefined;
  readonly #quiet = new Quiet();
  readonly #kept: { dispose(): void };

  constructor(
    /** The folder of `evengrey.json`. */
    readonly root: vscode.Uri,
    private readonly checker: CheckerClient,
  ) {
    // a picture that is saved in an hour is judged as quickly as one that is saved now
    this.#kept = checker.keep();
  }

  get settings(): vscode.Uri {
    return vscode.Uri.joinPath(this.root, 'evengrey.json');
  }

  contains(file: vscode.Uri): boolean {
    return file.scheme === this.root.scheme && file.path.startsWith(`${this.root.path}/`);
  }

  /**
   * The folder may not be as it was checked: check soon, unless that is left to the user. Many changes are one.
   * @param file what changed, where that is known
   */
  touch(file?: vscode.Uri) {
    if (!vscode.workspace.getConfiguration('evengrey', this.root).get('checkOnChange', true)) return;
    clearTimeout(this.#timer);
    const wait = this.#quiet.changed(Date.now(), file?.path ?? null);
    this.#timer = setTimeout(() => {
      this.#quiet.over();
      void this.check();
    }, wait);
  }

  /**
   * Checks now; a check that is under way is given up, what it has read is kept by the checker's cache. Settles when
   * the state is up to date, be it by a later check. Never throws: a failure is a state.
   */
  check(onProgress?: (progress: Progress) => void, token?: vscode.CancellationToken): Promise<void> {
    this.#running?.abort();
    const running = new AbortController();
    this.#running = running;
    const cancel = token?.onCancellationRequested(() => running.abort());
    this.#latest = this.#run(++this.#generation, running.signal, onProgress).finally(() => cancel?.dispose());
    return this.#latest;
  }

  async #run(generation: number, signal: AbortSignal, onProgress?: (progress: Progress) => void) {
    const isLatest = () => generation === this.#generation;
    const before = this.answer;
    this.#set({ kind: 'checking', progress: null });
    try {
      const answer = await this.checker.ask(
        'check',
        { root: this.root.fsPath, open: openTexts(this.root) },
        {
          signal,
          onProgress: progress => {
            if (!isLatest()) return;
            onProgress?.(progress);
            this.#set({ kind: 'checking', progress });
          },
        },
      );
      if (isLatest()) this.#set({ kind: 'checked', answer });
    } catch (error) {
      if (!isLatest()) return this.#latest;
      if (!(error instanceof Cancelled)) this.#set({ kind: 'failed', message: (error as Error).message });
      else this.#set(before ? { kind: 'checked', answer: before } : { kind: 'unchecked' });
    }
    if (!isLatest()) await this.#latest;
  }

  #set(state: BookState) {
    this.state = state;
    if (state.kind === 'checked') this.answer = state.answer;
    this.#changed.fire(this);
  }

  dispose() {
    this.#generation++;
    this.#latest = undefined;
    clearTimeout(this.#timer);
    this.#running?.abort();
    this.#kept.dispose();
    this.#changed.dispose();
  }
}
