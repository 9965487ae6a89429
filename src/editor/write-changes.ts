// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';

/** Undefined: there is no such file. */
export async function documentOf(file: vscode.Uri): Promise<vscode.TextDocument | undefined> {
  try {
    await vscode.workspace.fs.stat(file);
  } catch {
    return undefined;
  }
  return vscode.workspace.openTextDocument(file);
}

/** Through the editor, so that it can be undone; what a person has not saved there stays for that person to save. */
export async function writeChanges(
  file: vscode.Uri,
  document: vscode.TextDocument | undefined,
  changes: readonly { offset: number; length: number; content: string }[],
) {
  const edit = new vscode.WorkspaceEdit();
  if (!document)
    edit.createFile(file, { contents: Buffer.from(changes.map(({ content }) => content).join('')) });
  else
    for (const { offset, length, content } of changes) {
      const range = new vscode.Range(document.positionAt(offset), document.positionAt(offset + length));
      edit.replace(file, range, content);
    }
  const unsaved = document?.isDirty ?? false;
  if (!(await vscode.workspace.applyEdit(edit)))
    throw new Error(`${path.posix.basename(file.path)} could not be changed.`);
  if (document && !unsaved) await document.save();
  else if (unsaved) await vscode.window.showTextDocument(document!);
}
