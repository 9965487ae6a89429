// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';
import type { CheckerClient } from '../checker-client';
import { told } from '../convert';
import { askFirst } from './ask';
import { mayWriteHere } from './may-write';

/** Writes the settings of a book that has none, as a person answers, and opens them; those that are there are opened. */
export async function writeSettings(checker: CheckerClient, named?: vscode.Uri): Promise<void> {
  const folder = named ?? (await folderOfBook());
  if (!folder || !mayWriteHere(folder)) return;
  const settings = vscode.Uri.joinPath(folder, 'evengrey.json');
  await told(async () => {
    if (await exists(settings)) return openThere(settings);
    const answers = await askFirst(await checker.ask('firstChoices', {}));
    if (!answers) return;
    const written = await checker.ask('writeFirst', { root: folder.fsPath, answers });
    if (written) await vscode.window.showTextDocument(settings);
    else await openThere(settings);
  });
}

async function openThere(settings: vscode.Uri): Promise<void> {
  await vscode.window.showTextDocument(settings);
  const where = vscode.workspace.asRelativePath(settings);
  void vscode.window.showInformationMessage(
    vscode.l10n.t('This book has settings already: {0} stays as it is.', where),
  );
}

async function folderOfBook(): Promise<vscode.Uri | undefined> {
  const t = vscode.l10n.t;
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (!folders.length) {
    const open = t('Open a Folder');
    const words = t('Open the folder that holds the pictures of the book: its settings are written there.');
    void vscode.window
      .showInformationMessage(words, open)
      .then(answer => answer && vscode.commands.executeCommand('vscode.openFolder'));
    return;
  }
  if (folders.length === 1) return folders[0].uri;
  return (await vscode.window.showWorkspaceFolderPick({ placeHolder: t('Which folder holds the book?') }))
    ?.uri;
}

const exists = (file: vscode.Uri): Promise<boolean> =>
  Promise.resolve(vscode.workspace.fs.stat(file)).then(
    () => true,
    () => false,
  );
