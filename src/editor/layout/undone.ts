// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';

/** Texts as they were before lines of them were changed and saved, by address. */
const before = new Map<string, string>();
/** What one step of undoing changes comes within this, in ms. */
const TOGETHER_MS = 300;

/** A text that was changed and saved as part of a larger step. */
export function changedAndSaved({ uri }: vscode.TextDocument, textBefore: string) {
  before.set(uri.toString(), textBefore);
}

/**
 * Undone in the editor a text is as it was, and its file is not: the editor saves nothing by itself, and may have several
 * such texts open in no tab that a person looks at. So that is told, with the way to save them.
 */
export function registerUndone(): vscode.Disposable {
  let undone: vscode.TextDocument[] = [];
  let timer: NodeJS.Timeout | undefined;
  const listening = vscode.workspace.onDidChangeTextDocument(({ document, reason }) => {
    const key = document.uri.toString();
    if (reason !== vscode.TextDocumentChangeReason.Undo || before.get(key) !== document.getText()) return;
    before.delete(key);
    undone.push(document);
    clearTimeout(timer);
    timer = setTimeout(() => {
      const all = undone.filter(({ isDirty }) => isDirty);
      undone = [];
      if (all.length) void tell(all);
    }, TOGETHER_MS);
  });
  return vscode.Disposable.from(listening, { dispose: () => clearTimeout(timer) });
}

async function tell(documents: readonly vscode.TextDocument[]) {
  const t = vscode.l10n.t;
  const names = documents.map(({ uri }) => vscode.workspace.asRelativePath(uri)).join(', ');
  const save = t('Save');
  const answer = await vscode.window.showInformationMessage(
    t('Undone, and not saved: on the disk these place the result still: {0}.', names),
    save,
  );
  if (answer === save) for (const document of documents) await document.save();
}
