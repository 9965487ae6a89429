// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from './book';
import type { Books } from './books';
import { fileInFront } from './picture-in-front';

/** Pages that are about a book as a whole, with its folder: the editor itself knows no file of theirs. */
const pages = new Map<vscode.WebviewPanel, vscode.Uri>();
const turned = new vscode.EventEmitter<void>();
/** Such a page came to the front, or went from it. */
export const onDidTurnPage = turned.event;

/** Says of a page, for as long as it is open, which book it is about. */
export function isPageOf(panel: vscode.WebviewPanel, root: vscode.Uri) {
  pages.set(panel, root);
  panel.onDidChangeViewState(() => turned.fire());
  panel.onDidDispose(() => {
    pages.delete(panel);
    turned.fire();
  });
  turned.fire();
}

/** The book of the editor or page in front; undefined where that is of none. */
export function bookInFront(books: Books): Book | undefined {
  const file = fileInFront();
  if (file) return books.of(file);
  const page = [...pages].find(([panel]) => panel.active);
  return page && books.at(page[1]);
}
