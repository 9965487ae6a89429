// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';

/** Whether a folder may be written into; why not is told. */
export function mayWriteHere({ scheme }: vscode.Uri): boolean {
  const t = vscode.l10n.t;
  if (scheme !== 'file')
    void vscode.window.showInformationMessage(
      t('A book is checked where its files lie on a disk: open a copy of this folder from one.'),
    );
  else if (!vscode.workspace.isTrusted)
    void vscode.window.showInformationMessage(
      t(
        'Nothing is written until you trust this workspace: books that have settings are checked all the same.',
      ),
    );
  else return true;
  return false;
}
