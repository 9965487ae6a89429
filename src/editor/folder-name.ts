// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';

/** A folder as a person sees it in the explorer: one of the workspace itself by its own name. */
export function folderName(folder: vscode.Uri): string {
  const isRoot = vscode.workspace.workspaceFolders?.some(({ uri }) => uri.toString() === folder.toString());
  return isRoot ? path.posix.basename(folder.path) : vscode.workspace.asRelativePath(folder);
}
