// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from './book';
import type { Books } from './books';
import { increments } from './increments';
import { PICTURE_EDITOR, TIFF_EDITOR } from './picture-editor';
import { pictureInFront } from './picture-in-front';
import { tellNoBook } from './start/no-book';

export function registerCommands(books: Books): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('evengrey.check', () => checkAll(books)),
    vscode.commands.registerCommand('evengrey.openPreview', openPreview),
  );
}

/** Reads every book of the workspace again, with progress that can be cancelled. */
async function checkAll(books: Books) {
  await books.find();
  // the notification stays until somebody answers it: the command does not
  if (books.all.length === 0) return void tellNoBook();
  await vscode.window.withProgress(
    {
      location: vscode.ProgressLocation.Notification,
      title: vscode.l10n.t('Checking the book'),
      cancellable: true,
    },
    async (progress, token) => {
      for (const book of books.all) {
        if (token.isCancellationRequested) return;
        await book.check(increments(progress), token);
        tellFailure(book);
      }
    },
  );
}

function tellFailure({ state, root }: Book) {
  if (state.kind !== 'failed') return;
  const where = vscode.workspace.asRelativePath(root);
  void vscode.window.showErrorMessage(
    vscode.l10n.t('Evengrey could not check {0}: {1}', where, state.message),
  );
}

/** From a button of the built-in preview, the explorer, or the palette with a picture in front. */
async function openPreview(uri?: vscode.Uri) {
  const picture = uri ?? pictureInFront();
  if (!picture) {
    const text = vscode.l10n.t('Open a picture first, or choose one in the explorer.');
    return void vscode.window.showInformationMessage(text);
  }
  const viewType = /\.tiff?$/i.test(picture.path) ? TIFF_EDITOR : PICTURE_EDITOR;
  await vscode.commands.executeCommand('vscode.openWith', picture, viewType);
}
