// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from '../book';
import { chosenBook } from '../book-choice';
import { isPageOf } from '../book-in-front';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { exportPage } from './export';
import { OverviewSession } from './session';

const VIEW_TYPE = 'evengrey.overview';

/** A whole book on one screen: one panel a book, which comes back with the window. */
export function registerOverview(
  extension: vscode.Uri,
  books: Books,
  checker: CheckerClient,
): vscode.Disposable {
  const panels = new Map<string, vscode.WebviewPanel>();

  function fill(panel: vscode.WebviewPanel, root: vscode.Uri) {
    const key = root.toString();
    panels.set(key, panel);
    isPageOf(panel, root);
    panel.onDidDispose(() => panels.get(key) === panel && panels.delete(key));
    new OverviewSession(panel, root, books, checker, extension);
  }

  function show({ root }: Book) {
    const open = panels.get(root.toString());
    if (open) return open.reveal();
    fill(vscode.window.createWebviewPanel(VIEW_TYPE, '', vscode.ViewColumn.Active), root);
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand('evengrey.showBook', async () => {
      const book = await chosenBook(books);
      if (book) show(book);
    }),
    vscode.commands.registerCommand('evengrey.exportBook', async () => {
      const book = await chosenBook(books);
      if (book) await exportPage(book.root, checker);
    }),
    vscode.window.registerWebviewPanelSerializer(VIEW_TYPE, {
      async deserializeWebviewPanel(panel, state: { root?: string | null } | undefined) {
        if (!state?.root) return panel.dispose();
        fill(panel, vscode.Uri.parse(state.root, true));
      },
    }),
  );
}
