// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import { kindOf } from '../layout/kinds';
import { Book } from './book';
import type { CheckerClient } from './checker-client';

const SETTINGS = '**/evengrey.json';
/** What a check may depend on beside layouts: pictures, settings, house files, profiles, records, ignore files; and whole folders. */
const MATTERS =
  /\.(jpe?g|jpe|png|tiff?|webp|avif|gif|psd|bmp|hei[cf]|jp2|svg|jsonc?|ic[cm]|txt|ti3|gitignore|evengreyignore)$|\/[^./]+$/i;

/**
 * The books of the workspace. Without one nothing is watched but the coming of an `evengrey.json`, and no process is
 * started.
 */
export class Books {
  readonly #changed = new vscode.EventEmitter<Book>();
  /** A book's state changed, or the book is new. */
  readonly onDidChange = this.#changed.event;
  readonly #removed = new vscode.EventEmitter<Book>();
  readonly onDidRemove = this.#removed.event;

  readonly #books = new Map<string, Book>();
  readonly #watchers = new Map<string, vscode.Disposable>();
  readonly #disposables: vscode.Disposable[] = [this.#changed, this.#removed];

  constructor(private readonly checker: CheckerClient) {
    const settings = vscode.workspace.createFileSystemWatcher(SETTINGS, false, true, false);
    this.#disposables.push(
      settings,
      settings.onDidCreate(uri => this.#add(uri)),
      settings.onDidDelete(uri => this.#remove(uri)),
      vscode.workspace.onDidChangeWorkspaceFolders(() => this.find()),
      // what changed while another program had the focus may have been missed by a watcher
      vscode.window.onDidChangeWindowState(({ focused }) => focused && this.#touchAll()),
    );
  }

  get all(): Book[] {
    return [...this.#books.values()];
  }

  /** The innermost book that a file lies in. */
  of(file: vscode.Uri): Book | undefined {
    return this.all
      .filter(book => book.contains(file))
      .sort((x, y) => y.root.path.length - x.root.path.length)[0];
  }

  /** The innermost book that a file or folder lies in, or whose own folder it is. */
  at(place: vscode.Uri): Book | undefined {
    return this.of(vscode.Uri.joinPath(place, 'evengrey.json'));
  }

  /** Looks through the workspace for books; again when its folders change. */
  async find() {
    const found = await vscode.workspace.findFiles(SETTINGS, '**/node_modules/**', 50);
    const present = new Set(found.map(uri => uri.toString()));
    for (const book of this.all) if (!present.has(book.settings.toString())) this.#remove(book.settings);
    for (const uri of found) this.#add(uri);
  }

  dispose() {
    for (const book of this.all) book.dispose();
    vscode.Disposable.from(...this.#disposables, ...this.#watchers.values()).dispose();
  }

  #add(settings: vscode.Uri) {
    // a check reads files through the operating system
    if (settings.scheme !== 'file' || this.#books.has(settings.toString())) return;
    const book = new Book(vscode.Uri.joinPath(settings, '..'), this.checker);
    this.#books.set(settings.toString(), book);
    book.onDidChange(() => this.#changed.fire(book));
    this.#watch(settings);
    this.#changed.fire(book);
    book.touch();
  }

  #remove(settings: vscode.Uri) {
    const book = this.#books.get(settings.toString());
    if (!book) return;
    this.#books.delete(settings.toString());
    book.dispose();
    this.#removed.fire(book);
  }

  /** One watcher a workspace folder, set up with its first book. */
  #watch(settings: vscode.Uri) {
    const folder = vscode.workspace.getWorkspaceFolder(settings);
    if (!folder || this.#watchers.has(folder.uri.toString())) return;
    const watcher = vscode.workspace.createFileSystemWatcher(new vscode.RelativePattern(folder, '**/*'));
    const touch = (uri: vscode.Uri) => {
      for (const book of this.all) if (book.contains(uri)) book.touch(uri);
    };
    const touchIfItMatters = (uri: vscode.Uri) => (MATTERS.test(uri.path) || kindOf(uri.path)) && touch(uri);
    watcher.onDidCreate(touchIfItMatters);
    watcher.onDidChange(touchIfItMatters);
    // of a folder that goes only the folder itself is told: a book may go with it
    watcher.onDidDelete(uri => {
      for (const { settings } of this.all)
        if (settings.path.startsWith(`${uri.path}/`)) this.#remove(settings);
      touch(uri);
    });
    this.#watchers.set(folder.uri.toString(), watcher);
  }

  #touchAll() {
    for (const book of this.all) book.touch();
  }
}
