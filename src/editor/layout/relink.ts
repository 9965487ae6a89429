// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { PlaceEdit } from '../../shared/layout-places';
import { rangeOf } from './ranges';

/** So often lines are looked for anew, where a text was changed while pictures were converted. */
const ATTEMPTS = 3;

/**
 * Changes lines of layouts as one step that the editor can undo. What is open stays open and is left to be saved; what
 * was not open is saved, so that a layout's tool finds it. Where a text is not as it was any more, `again` is asked for
 * the lines as they are now.
 * @returns the lines that were changed
 */
export async function relink(
  root: vscode.Uri,
  edits: readonly PlaceEdit[],
  again: () => Promise<PlaceEdit[]>,
): Promise<PlaceEdit[]> {
  for (let attempt = 1; edits.length; attempt++) {
    const changed = await changeLines(root, edits);
    if (changed) return changed;
    if (attempt === ATTEMPTS) {
      const text = vscode.l10n.t('A layout was changed meanwhile, so that no line of it was. Do it again.');
      void vscode.window.showWarningMessage(text);
      break;
    }
    edits = await again();
  }
  return [];
}

/** Undefined where a text is not as the edits expect it; nothing is changed then. */
async function changeLines(root: vscode.Uri, edits: readonly PlaceEdit[]): Promise<PlaceEdit[] | undefined> {
  const inTabs = new Set(tabs().map(uri => uri.toString()));
  const all = new vscode.WorkspaceEdit();
  const documents = new Map<string, vscode.TextDocument>();
  const changed: PlaceEdit[] = [];
  for (const edit of edits) {
    const uri = vscode.Uri.joinPath(root, edit.file);
    const document = documents.get(edit.file) ?? (await vscode.workspace.openTextDocument(uri));
    documents.set(edit.file, document);
    if (isBroken(document)) continue;
    if (document.getText(rangeOf(edit)) !== edit.from) return undefined;
    all.replace(uri, rangeOf(edit), edit.to);
    changed.push(edit);
  }
  const toSave = [...documents.values()].filter(
    document => !document.isDirty && !isBroken(document) && !inTabs.has(document.uri.toString()),
  );
  if (!(await vscode.workspace.applyEdit(all))) return undefined;
  for (const document of toSave) await document.save();
  tellBroken([...documents.values()].filter(isBroken));
  return changed;
}

/** Opened in another encoding than it was written in: saved so, letters would be lost. */
const isBroken = (document: vscode.TextDocument) => document.getText().includes('\uFFFD');

function tellBroken(documents: readonly vscode.TextDocument[]) {
  for (const { uri } of documents)
    void vscode.window.showWarningMessage(
      vscode.l10n.t(
        '{0} is left as it is: its letters cannot be read in the encoding that it opens in. Reopen it with its own encoding, and do it again.',
        vscode.workspace.asRelativePath(uri),
      ),
    );
}

const tabs = (): vscode.Uri[] =>
  vscode.window.tabGroups.all
    .flatMap(group => group.tabs)
    .flatMap(({ input }) => (input instanceof vscode.TabInputText ? input.uri : []));
