// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { CheckAnswer } from '../../shared/checker-protocol';
import type { Place } from '../../shared/layout-places';
import type { Book } from '../book';
import type { Books } from '../books';
import { Cancelled, type CheckerClient } from '../checker-client';
import { layoutPath } from './open-texts';

/** Quiet time after a key before a text is read again. */
const QUIET_MS = 100;
/** So often a text is read for somebody who waits, while it goes on being written. */
const ATTEMPTS = 3;

/** A layout of a book, and the pictures that its text places. */
export interface Layout {
  uri: vscode.Uri;
  book: Book;
  places: readonly Place[];
  /** Of the document that this is true of; null: of the file, which is not open. */
  version: number | null;
}

const versions = (): ReadonlyMap<string, number> =>
  new Map(vscode.workspace.textDocuments.map(({ uri, version }) => [uri.toString(), version]));

/** A text that is being read. */
interface Reading {
  version: number;
  cancel: AbortController;
  done: Promise<void>;
}

/**
 * What the layouts of all books place: by the last check, and while a document is written by its own text. Texts are
 * read by the checker; one is sent only if it is a layout of a book and was changed.
 */
export class LayoutPlaces {
  readonly #changed = new vscode.EventEmitter<Layout>();
  readonly onDidChange = this.#changed.event;
  readonly #removed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidRemove = this.#removed.event;

  readonly #layouts = new Map<string, Layout>();
  readonly #timers = new Map<string, NodeJS.Timeout>();
  readonly #reading = new Map<string, Reading>();
  /** Versions of documents when the check began that is under way; and the answers that are shown. */
  readonly #begun = new WeakMap<Book, ReadonlyMap<string, number>>();
  readonly #answered = new WeakMap<Book, CheckAnswer>();
  /** Documents whose unsaved text was counted. */
  readonly #unsaved = new Set<string>();
  readonly #disposables: vscode.Disposable[];

  constructor(
    private readonly books: Books,
    private readonly checker: CheckerClient,
  ) {
    this.#disposables = [
      this.#changed,
      this.#removed,
      books.onDidChange(book => this.#changedBook(book)),
      books.onDidRemove(book => this.#keep(book, new Set())),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length && this.#bookOf(document)) this.#soon(document);
      }),
      vscode.workspace.onDidCloseTextDocument(document => this.#closed(document)),
    ];
  }

  /** A layout as its text is now; undefined for a document that is none. */
  async of(document: vscode.TextDocument): Promise<Layout | undefined> {
    const known = () => this.#layouts.get(document.uri.toString());
    for (let attempt = 1; attempt <= ATTEMPTS; attempt++) {
      const layout = known();
      if (!layout || layout.version === document.version) return layout;
      await this.#read(document);
    }
    return known()?.version === document.version ? known() : undefined;
  }

  dispose() {
    for (const timer of this.#timers.values()) clearTimeout(timer);
    for (const { cancel } of this.#reading.values()) cancel.abort();
    vscode.Disposable.from(...this.#disposables).dispose();
  }

  #bookOf({ uri }: vscode.TextDocument): Book | undefined {
    const book = this.books.of(uri);
    return book && layoutPath(book.root, uri) ? book : undefined;
  }

  #changedBook(book: Book) {
    const { state } = book;
    if (state.kind === 'checking' && state.progress === null) this.#begun.set(book, versions());
    // a check that was given up leaves the answer of before
    if (state.kind !== 'checked' || this.#answered.get(book) === state.answer) return;
    this.#answered.set(book, state.answer);
    this.#checked(book, state.answer);
  }

  /** A check counted the texts as they were when it began; one that was written on since is read again. */
  #checked(book: Book, answer: CheckAnswer) {
    const begun = this.#begun.get(book);
    const open = new Map(vscode.workspace.textDocuments.map(document => [document.uri.toString(), document]));
    const kept = new Set<string>();
    for (const { path, places } of answer.layouts) {
      const uri = vscode.Uri.joinPath(book.root, path);
      // a book within this one says itself what is to be said of its layouts
      if (this.books.of(uri) !== book) continue;
      const key = uri.toString();
      const document = open.get(key);
      kept.add(key);
      if (document && begun?.get(key) !== document.version) this.#readAnew(document);
      else this.#set({ uri, book, places, version: document?.version ?? null });
    }
    this.#keep(book, kept);
  }

  #keep(book: Book, kept: ReadonlySet<string>) {
    for (const [key, layout] of this.#layouts)
      if (layout.book === book && !kept.has(key)) {
        this.#layouts.delete(key);
        this.#removed.fire(layout.uri);
      }
  }

  #soon(document: vscode.TextDocument) {
    const key = document.uri.toString();
    if (document.isDirty) this.#unsaved.add(key);
    clearTimeout(this.#timers.get(key));
    this.#timers.set(
      key,
      setTimeout(() => {
        this.#timers.delete(key);
        void this.#read(document);
      }, QUIET_MS),
    );
  }

  /** What was not saved and is let go counts no more; versions of the next document begin anew. */
  #closed(document: vscode.TextDocument) {
    const key = document.uri.toString();
    clearTimeout(this.#timers.get(key));
    this.#timers.delete(key);
    const layout = this.#layouts.get(key);
    if (layout) this.#layouts.set(key, { ...layout, version: null });
    if (this.#unsaved.delete(key)) this.#bookOf(document)?.touch();
  }

  /** What is under way may not know of the last check yet. */
  #readAnew(document: vscode.TextDocument) {
    const key = document.uri.toString();
    this.#reading.get(key)?.cancel.abort();
    this.#reading.delete(key);
    void this.#read(document);
  }

  /** Reads a text once, whoever asks for it; an older text of the document is not wanted any more. */
  #read(document: vscode.TextDocument): Promise<void> {
    const { version } = document;
    const key = document.uri.toString();
    const before = this.#reading.get(key);
    if (before?.version === version) return before.done;
    before?.cancel.abort();
    const cancel = new AbortController();
    const done = this.#ask(document, cancel.signal).finally(() => {
      if (this.#reading.get(key)?.cancel === cancel) this.#reading.delete(key);
    });
    this.#reading.set(key, { version, cancel, done });
    return done;
  }

  async #ask(document: vscode.TextDocument, signal: AbortSignal) {
    const { uri, version } = document;
    const book = this.#bookOf(document);
    const path = book && layoutPath(book.root, uri);
    if (!path || document.isClosed) return;
    try {
      const question = { root: book.root.fsPath, path, text: document.getText() };
      const { places, changed } = await this.checker.ask('places', question, { signal });
      if (document.isClosed || document.version !== version) return;
      this.#set({ uri, book, places, version });
      if (changed) book.touch();
    } catch (error) {
      // a checker that ended is told where the book is checked
      if (!(error instanceof Cancelled)) book.touch();
    }
  }

  #set(layout: Layout) {
    this.#layouts.set(layout.uri.toString(), layout);
    this.#changed.fire(layout);
  }
}
