// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';

/** Texts as they were before lines of them were changed and saved, by address, as long as the editor has them open. */
const before = new Map<string, Set<string>>();
/** What one step of undoing changes comes within this, in ms. */
const TOGETHER_MS = 300;

/** A text that was changed and saved as part of a larger step. */
export function changedAndSaved({ uri }: vscode.TextDocument, textBefore: string) {
  const texts = before.get(uri.toString()) ?? new Set();
  before.set(uri.toString(), texts.add(textBefore));
}

/**
 * Undone in the editor a text is as it was, and its file is not: the editor saves nothing by itself, and may have several
 * such texts open in no tab that a person looks at. So that is told, with the way to save them.
 */
export function registerUndone(): vscode.Disposable {
  const undone = new Set<vscode.TextDocument>();
  let timer: NodeJS.Timeout | undefined;
  return vscode.Disposable.from(
    vscode.workspace.onDidChangeTextDocument(({ document, reason }) => {
      if (reason !== vscode.TextDocumentChangeReason.Undo) return;
      if (!before.get(document.uri.toString())?.has(document.getText())) return;
      undone.add(document);
      clearTimeout(timer);
      timer = setTimeout(() => {
        const all = [...undone].filter(({ isDirty }) => isDirty);
        undone.clear();
        if (all.length) void tell(all);
      }, TOGETHER_MS);
    }),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => before.delete(uri.toString())),
    { dispose: () => clearTimeout(timer) },
  );
}

async function tell(documents: readonly vscode.TextDocument[]) {
  const t = vscode.l10n.t;
  const names = documents.map(({ uri }) => vscode.workspace.asRelativePath(uri)).join(', ');
  const save = t('Save');
  const answer = await vscode.window.showInformationMessage(
    t('Undone in the editor, and not saved: {0}.', names),
    save,
  );
  if (answer === save) for (const document of documents) await document.save();
}
