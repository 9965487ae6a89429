// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';
import type { Books } from '../books';
import { Cancelled, type CheckerClient } from '../checker-client';
import { mayWriteHere } from './may-write';

/** Of the folder that is made in the one that a person picks. */
const NAME = 'evengrey-demo';

/** Draws the demo book into a new folder where the person says, and leads there. */
export async function makeDemoBook(books: Books, checker: CheckerClient): Promise<void> {
  const t = vscode.l10n.t;
  const [parent] =
    (await vscode.window.showOpenDialog({
      ...{ canSelectFiles: false, canSelectFolders: true },
      title: t('Where to make the demo book: a folder "{0}" in the one you pick', NAME),
      openLabel: t('Make It Here'),
      defaultUri: vscode.workspace.workspaceFolders?.[0].uri,
    })) ?? [];
  if (!parent || !mayWriteHere(parent)) return;
  const folder = vscode.Uri.joinPath(parent, NAME);
  const title = t('Drawing the demo book');
  const location = vscode.ProgressLocation.Notification;
  try {
    await vscode.window.withProgress({ location, title, cancellable: true }, async (_, token) => {
      const cancel = new AbortController();
      token.onCancellationRequested(() => cancel.abort());
      await checker.ask('demo', { folder: folder.fsPath }, { signal: cancel.signal });
    });
  } catch (error) {
    if (!(error instanceof Cancelled)) return void vscode.window.showErrorMessage((error as Error).message);
    const words = t('Stopped. What was drawn lies in {0}.', folder.fsPath);
    return void vscode.window.showInformationMessage(words);
  }
  await vscode.commands.executeCommand('setContext', 'evengrey.demoMade', true);
  // a watcher that is late finds the new folder, but not what was written into it before
  await books.find();
  void leadTo(folder);
}

async function leadTo(folder: vscode.Uri): Promise<void> {
  const t = vscode.l10n.t;
  if (vscode.workspace.getWorkspaceFolder(folder)) {
    await vscode.commands.executeCommand('revealInExplorer', folder);
    return void vscode.window.showInformationMessage(
      t('The demo book is in {0}. Its faults are there on purpose: see the Problems panel.', NAME),
    );
  }
  const open = t('Open in a New Window');
  const words = t('The demo book is in {0}. Open its folder to see what is found in it.', folder.fsPath);
  if ((await vscode.window.showInformationMessage(words, open)) === open)
    await vscode.commands.executeCommand('vscode.openFolder', folder, { forceNewWindow: true });
}
