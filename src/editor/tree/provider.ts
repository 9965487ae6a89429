// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from '../book';
import type { Books } from '../books';
import { type By, type Group, groupsOf } from './groups';
import { itemOf, type Row } from './items';

/** The pictures of the books in groups. Nothing is worked out before somebody looks, and then once until a book changes. */
export class BookTree implements vscode.TreeDataProvider<Row> {
  readonly #changed = new vscode.EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  #by: By;
  #filter = '';
  readonly #groups = new Map<Book, Group[]>();

  constructor(
    private readonly books: Books,
    by: By,
  ) {
    this.#by = by;
  }

  get by(): By {
    return this.#by;
  }

  set by(by: By) {
    this.#by = by;
    this.refresh();
  }

  get filter(): string {
    return this.#filter;
  }

  set filter(filter: string) {
    this.#filter = filter;
    this.refresh();
  }

  refresh() {
    this.#groups.clear();
    this.#changed.fire(undefined);
  }

  dispose() {
    this.#changed.dispose();
  }

  getTreeItem(row: Row): vscode.TreeItem {
    return itemOf(row);
  }

  getChildren(row?: Row): Row[] {
    const { all } = this.books;
    if (!row) return all.length === 1 ? this.#groupRows(all[0]) : all.map(book => ({ kind: 'book', book }));
    const { book } = row;
    if (row.kind === 'book') return this.#groupRows(book);
    if (row.kind !== 'group') return [];
    const { group } = row;
    return [
      ...group.told.map((finding, at): Row => ({ kind: 'told', book, finding, at })),
      ...group.pictures.map((leaf): Row => ({ kind: 'picture', book, group, leaf })),
    ];
  }

  /** Of the last whole answer: it stays while the next is made. */
  groups(book: Book): Group[] {
    let groups = this.#groups.get(book);
    if (!groups) {
      groups = book.answer ? groupsOf(book.answer, this.#by, this.#filter) : [];
      this.#groups.set(book, groups);
    }
    return groups;
  }

  #groupRows(book: Book): Row[] {
    return this.groups(book).map(group => ({ kind: 'group', book, group }));
  }
}
