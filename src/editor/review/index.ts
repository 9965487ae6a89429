// no-unit-test: it lives in VS Code; test/e2e/suites/review tests it there
import * as vscode from 'vscode';
import type { ReviewWish, Since } from '../../shared/review';
import type { Book } from '../book';
import { chosenBook } from '../book-choice';
import { isPageOf } from '../book-in-front';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { changedFile } from './changed';
import { ReviewSession } from './session';

const VIEW_TYPE = 'evengrey.review';

/** What changed in a book: one panel for what is not committed and one for the branch, which come back with the window. */
export function registerReview(
  extension: vscode.Uri,
  books: Books,
  checker: CheckerClient,
): vscode.Disposable {
  const sessions = new Map<string, ReviewSession>();

  function fill(panel: vscode.WebviewPanel, root: vscode.Uri, wish: ReviewWish) {
    const session = new ReviewSession(panel, root, wish, books, checker, extension);
    const key = keyOf(root, wish.since);
    sessions.set(key, session);
    isPageOf(panel, root);
    panel.onDidDispose(() => sessions.get(key) === session && sessions.delete(key));
  }

  function show({ root }: Book, wish: ReviewWish) {
    const open = sessions.get(keyOf(root, wish.since));
    if (open) return open.show(wish);
    fill(vscode.window.createWebviewPanel(VIEW_TYPE, '', vscode.ViewColumn.Active), root, wish);
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand('evengrey.compareChange', async (from?: unknown) => {
      const file = changedFile(from);
      // the menu of the source-control view does not tell pictures from other files
      if (!file || !PICTURE.test(file.path)) return tell(NO_PICTURE());
      if (!books.all.length) await books.find();
      const book = books.of(file);
      if (!book) return tell(NO_BOOK());
      const path = file.path.slice(book.root.path.length + 1);
      show(book, { since: 'commit', picture: { path, page: null } });
    }),
    ...(['commit', 'branch'] as const).map(since =>
      vscode.commands.registerCommand(COMMANDS[since], async () => {
        const book = await chosenBook(books);
        if (book) show(book, { since, picture: null });
      }),
    ),
    vscode.window.registerWebviewPanelSerializer(VIEW_TYPE, {
      async deserializeWebviewPanel(panel, state: { root?: string; wish?: ReviewWish } | undefined) {
        if (!state?.root || !state.wish) return panel.dispose();
        fill(panel, vscode.Uri.parse(state.root, true), state.wish);
      },
    }),
  );
}

const COMMANDS: Record<Since, string> = {
  commit: 'evengrey.reviewUncommitted',
  branch: 'evengrey.reviewBranch',
};

const PICTURE = /\.(jpe?g|jpe|png|webp|avif|gif|tiff?|psd)$/i;

const keyOf = (root: vscode.Uri, since: Since) => `${since} ${root}`;

const tell = (words: string) => void vscode.window.showInformationMessage(words);

const NO_PICTURE = () =>
  vscode.l10n.t(
    'Only pictures are compared as they print: choose a changed one in the source-control view, or open one.',
  );
const NO_BOOK = () =>
  vscode.l10n.t(
    'This picture is in no book, and how it prints is compared within its book. Put a file evengrey.json into the folder that has the pictures.',
  );
