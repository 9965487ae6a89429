// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import { kindOf } from '../../layout/kinds';
import type { OpenText } from '../../shared/layout-places';

/** Of a file in a book, forward slashes; undefined for what is no layout in it. */
export function layoutPath(root: vscode.Uri, { scheme, path }: vscode.Uri): string | undefined {
  const isIn = scheme === root.scheme && path.startsWith(`${root.path}/`);
  return isIn && kindOf(path) ? path.slice(root.path.length + 1) : undefined;
}

/** Texts of layouts in a book that are open and not saved: they count, not what is stored. */
export function openTexts(root: vscode.Uri): OpenText[] {
  return vscode.workspace.textDocuments.flatMap(document => {
    const path = document.isDirty ? layoutPath(root, document.uri) : undefined;
    return path ? { path, text: document.getText() } : [];
  });
}
