// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import { posix } from 'node:path';
import * as vscode from 'vscode';
import { kindOf } from '../../layout/kinds';
import type { OpenText } from '../../shared/layout-places';
import type { Book } from '../book';

/** Of a file in a book, forward slashes; undefined for what is no layout in it. */
export function layoutPath(root: vscode.Uri, { scheme, path }: vscode.Uri): string | undefined {
  const isIn = scheme === root.scheme && path.startsWith(`${root.path}/`);
  return isIn && kindOf(path) ? path.slice(root.path.length + 1) : undefined;
}

/** Texts of layouts in a book that are open and not saved: they count, not what is stored. */
export const openTexts = (root: vscode.Uri): OpenText[] => unsaved(uri => layoutPath(root, uri));

/** The same, and its settings, which name pictures too. */
export const openTextsThatName = ({ root, settings }: Pick<Book, 'root' | 'settings'>): OpenText[] =>
  unsaved(uri => (uri.toString() === settings.toString() ? posix.basename(uri.path) : layoutPath(root, uri)));

const unsaved = (pathOf: (uri: vscode.Uri) => string | undefined): OpenText[] =>
  vscode.workspace.textDocuments.flatMap(document => {
    const path = document.isDirty ? pathOf(document.uri) : undefined;
    return path ? { path, text: document.getText() } : [];
  });
