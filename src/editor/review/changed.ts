// no-unit-test: it lives in VS Code; test/e2e/suites/review tests it there
import * as vscode from 'vscode';
import { pictureInFront } from '../picture-in-front';

/**
 * The file that a menu or a button means: an entry of the source-control view, a file, or a file as source control holds
 * it; without any of them the picture in front.
 */
export function changedFile(from: unknown): vscode.Uri | undefined {
  const uri = from instanceof vscode.Uri ? from : resourceOf(from);
  const file = uri ?? pictureInFront();
  return file && inFolder(file);
}

/** What the source-control view passes of an entry. */
function resourceOf(from: unknown): vscode.Uri | undefined {
  if (typeof from !== 'object' || from === null || !('resourceUri' in from)) return;
  return from.resourceUri instanceof vscode.Uri ? from.resourceUri : undefined;
}

/** Of an earlier version the file of today. */
function inFolder(uri: vscode.Uri): vscode.Uri {
  if (uri.scheme !== 'git') return uri;
  try {
    const { path } = JSON.parse(uri.query);
    return typeof path === 'string' ? vscode.Uri.file(path) : uri;
  } catch {
    return uri;
  }
}
