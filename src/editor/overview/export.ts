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
  const target = await vscode.window.showSaveDialog({
    title: t('Export the Book as One HTML Page'),
    saveLabel: t('Export'),
    defaultUri: await freeName(root),
    filters: { HTML: ['html', 'htm'] },
  });
  if (!target) return;
  if (target.scheme !== 'file') return tell(t('The page can be written to a disk only.'));
  const replace = await isThere(target);
  const name = path.posix.basename(target.path);
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
    '{0} is written into {1}: the whole book, its pictures too, in one file.',
    name,
    path.dirname(target.fsPath),
  );
  void offerToOpen(words, target);
  return words;
}

/** A name inside the book's folder that nothing has yet: a layout may well be called as the folder is. */
async function freeName(root: vscode.Uri): Promise<vscode.Uri> {
  const stem = `${path.posix.basename(root.path)}-preview`;
  for (let n = 1; ; n++) {
    const file = vscode.Uri.joinPath(root, `${n === 1 ? stem : `${stem}-${n}`}.html`);
    if (!(await isThere(file))) return file;
  }
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
  const t = vscode.l10n.t;
  // a browser elsewhere has no way to a file of this machine; from the explorer it can be fetched
  const open = vscode.env.remoteName
    ? {
        title: t('Show in the Explorer'),
        run: () => vscode.commands.executeCommand('revealInExplorer', page),
      }
    : { title: t('Open'), run: () => vscode.env.openExternal(page) };
  if (await vscode.window.showInformationMessage(words, open.title)) await open.run();
}
