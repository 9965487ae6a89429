// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import { Cancelled, type CheckerClient } from '../checker-client';
import { increments } from '../increments';

/**
 * Writes a book as one page for a browser where the person says; the editor's dialog asks before something is replaced.
 * Resolves with what came of it in words; undefined where it was given up.
 */
export async function exportPage(root: vscode.Uri, checker: CheckerClient): Promise<string | undefined> {
  const t = vscode.l10n.t;
  const name = `${path.posix.basename(root.path)}.html`;
  const target = await vscode.window.showSaveDialog({
    title: t('Export the Book as One HTML Page'),
    saveLabel: t('Export'),
    defaultUri: vscode.Uri.joinPath(root, '..', name),
    filters: { HTML: ['html', 'htm'] },
  });
  if (!target) return;
  if (target.scheme !== 'file') return tell(t('The page can be written to a disk only.'));
  const replace = await isThere(target);
  try {
    await vscode.window.withProgress(
      { location: vscode.ProgressLocation.Notification, title: t('Writing {0}', name), cancellable: true },
      async (progress, token) => {
        const cancel = new AbortController();
        token.onCancellationRequested(() => cancel.abort());
        const question = { root: root.fsPath, file: target.fsPath, replace };
        const options = { signal: cancel.signal, onProgress: increments(progress) };
        await checker.ask('bookPage', question, options);
      },
    );
  } catch (error) {
    if (error instanceof Cancelled) return;
    return tell(t('The page was not written: {0}', (error as Error).message));
  }
  const words = t(
    '{0} is written: the whole book, its pictures too, in one file.',
    path.posix.basename(target.path),
  );
  void offerToOpen(words, target);
  return words;
}

async function isThere(file: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(file);
    return true;
  } catch {
    return false;
  }
}

function tell(words: string): string {
  void vscode.window.showErrorMessage(words);
  return words;
}

async function offerToOpen(words: string, page: vscode.Uri): Promise<void> {
  // a browser elsewhere has no way to a file of this machine
  const open = vscode.env.remoteName ? [] : [vscode.l10n.t('Open in the Browser')];
  if (await vscode.window.showInformationMessage(words, ...open)) await vscode.env.openExternal(page);
}
