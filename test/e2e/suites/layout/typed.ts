import * as vscode from 'vscode';
import { until } from '../../editor';
import { press, type } from '../../window';

/** Types where the cursor is, and waits until the document has it. What the editor suggests is not wanted. */
export async function typed(document: vscode.TextDocument, text: string) {
  await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
  await type(text);
  await press('Escape');
  await until(
    `"${text}" in the document`,
    () => document.getText(),
    all => all.includes(text),
  );
}
