// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';

/** Says, where a command wants a book, why there is none and how one is begun. */
export async function tellNoBook(): Promise<void> {
  const t = vscode.l10n.t;
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.length && folders.every(({ uri }) => uri.scheme !== 'file'))
    return void vscode.window.showInformationMessage(
      t(
        'There is no book here: books are read from a disk, and this workspace has none. A single picture can be opened.',
      ),
    );
  const begin = t('Write First Settings...');
  const demo = t('Make the Demo Book...');
  const words = folders.length
    ? t(
        'There is no book here yet: a folder of pictures becomes one by a file evengrey.json that says how it is printed.',
      )
    : t('No folder is open. Open the one that holds the pictures of the book, or look at the demo book.');
  const answer = await vscode.window.showInformationMessage(words, begin, demo);
  if (answer === begin) await vscode.commands.executeCommand('evengrey.writeSettings');
  if (answer === demo) await vscode.commands.executeCommand('evengrey.makeDemo');
}
