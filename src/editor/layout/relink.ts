// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { PlaceEdit } from '../../shared/layout-places';
import { rangeOf } from './ranges';
import { changedAndSaved } from './undone';

/** So often lines are looked for anew, where a text was changed while pictures were converted. */
const ATTEMPTS = 3;

/** Texts that are changed in the editor and not on the disk. Relative to the root. */
export interface ToSave {
  /** They hold changes of the person's own beside it, and are left to be saved. */
  unsaved: string[];
  /** Saving them failed. */
  notSaved: string[];
}

/** What became of lines that were to be changed. */
export interface Changed<Edit> extends ToSave {
  edits: Edit[];
}

/**
 * Changes lines of layouts as one step that the editor can undo. A text that was saved before is saved after, be it open
 * or not, so that no layout's tool finds half of the lines; one that was not is the person's to save. Where a text is
 * not as it was any more, `again` is asked for the lines as they are now.
 * @returns the lines that were changed
 */
export async function relink<Edit extends PlaceEdit>(
  root: vscode.Uri,
  edits: readonly Edit[],
  again: () => Promise<Edit[]>,
): Promise<Changed<Edit>> {
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
  return { edits: [], unsaved: [], notSaved: [] };
}

/** Those whose text is as they expect it. */
export async function fitting<Edit extends PlaceEdit>(
  root: vscode.Uri,
  edits: readonly Edit[],
): Promise<Edit[]> {
  const fits = async (edit: Edit) => {
    const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(root, edit.file));
    return document.getText(rangeOf(edit)) === edit.from;
  };
  const all = await Promise.all(edits.map(edit => fits(edit).catch(() => false)));
  return edits.filter((_, at) => all[at]);
}

/** Undefined where a text is not as the edits expect it; nothing is changed then. */
async function changeLines<Edit extends PlaceEdit>(
  root: vscode.Uri,
  edits: readonly Edit[],
): Promise<Changed<Edit> | undefined> {
  const all = new vscode.WorkspaceEdit();
  const documents = new Map<string, vscode.TextDocument>();
  const changed: Edit[] = [];
  for (const edit of edits) {
    const uri = vscode.Uri.joinPath(root, edit.file);
    const document = documents.get(edit.file) ?? (await vscode.workspace.openTextDocument(uri));
    documents.set(edit.file, document);
    if (isBroken(document)) continue;
    if (document.getText(rangeOf(edit)) !== edit.from) return undefined;
    all.replace(uri, rangeOf(edit), edit.to);
    changed.push(edit);
  }
  const whole = [...documents].filter(([, document]) => !isBroken(document));
  const saved = whole.filter(([, { isDirty }]) => !isDirty);
  const unsaved = whole.filter(([, { isDirty }]) => isDirty).map(([file]) => file);
  const texts = new Map(saved.map(([file, document]) => [file, document.getText()]));
  if (!(await vscode.workspace.applyEdit(all))) return undefined;
  const notSaved: string[] = [];
  for (const [file, document] of saved) {
    await document.save();
    // the editor may have saved it by itself
    if (document.isDirty) notSaved.push(file);
    else changedAndSaved(document, texts.get(file)!);
  }
  tellBroken([...documents.values()].filter(isBroken));
  return { edits: changed, unsaved, notSaved };
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
