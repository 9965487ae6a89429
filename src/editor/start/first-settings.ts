// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { told } from '../convert';
import { folderName } from '../folder-name';
import { askFirst } from './ask';
import { mayWriteHere } from './may-write';
import { whichFolder } from './which-folder';

/** Writes the settings of a book that has none, as a person answers, and opens them; those that are there are opened. */
export async function writeSettings(books: Books, checker: CheckerClient, named?: vscode.Uri): Promise<void> {
  const within = named ? [named] : openFolders();
  if (!within.length || !mayWriteHere(within.find(({ scheme }) => scheme === 'file') ?? within[0])) return;
  await told(async () => {
    const folder = await whichFolder(named ?? null, within, books, checker);
    if (!folder) return;
    const settings = vscode.Uri.joinPath(folder, 'evengrey.json');
    if (await exists(settings)) return openThere(settings);
    const answers = await askFirst(folderName(folder), await checker.ask('firstChoices', {}));
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

/** Those of the workspace; that there is none is told, with the way out. */
function openFolders(): vscode.Uri[] {
  const t = vscode.l10n.t;
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (!folders.length) {
    const open = t('Open a Folder');
    const words = t('Open the folder that holds the pictures of the book: its settings are written there.');
    void vscode.window
      .showInformationMessage(words, open)
      .then(answer => answer && vscode.commands.executeCommand('vscode.openFolder'));
  }
  return folders.map(({ uri }) => uri);
}

const exists = (file: vscode.Uri): Promise<boolean> =>
  Promise.resolve(vscode.workspace.fs.stat(file)).then(
    () => true,
    () => false,
  );
