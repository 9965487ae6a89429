import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { sleep, until } from './editor';
import { press, workbenchEval, workbenchText } from './window';

const MENU = '.action-widget';

/** Puts the cursor on a path. */
export async function pointAt(editor: vscode.TextEditor, path: string) {
  const at = editor.document.getText().indexOf(path);
  assert.ok(at >= 0, `${path} is in ${editor.document.getText()}`);
  const position = editor.document.positionAt(at + 2);
  editor.selection = new vscode.Selection(position, position);
  await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
}

/** Puts the cursor on a path and asks for quick fixes by the keyboard; `ours`: what tells that ours are among them. */
export async function ask(editor: vscode.TextEditor, path: string, ours = /Explain/) {
  await pointAt(editor, path);
  // the editor drops the question when a document changes or is checked meanwhile: a person asks again
  return until(
    'quick fixes',
    async () => {
      // answered while the book was checked it has the editor's own alone
      if (await menu()) await press('Escape');
      await press('Control+.');
      await sleep(1000);
      return menu();
    },
    text => ours.test(text),
  );
}

const menu = () => workbenchEval<string>('body', `element.querySelector("${MENU}")?.innerText ?? ""`);

/** Goes down to a row of the menu and takes it. */
export async function choose(title: string) {
  const focused = () =>
    workbenchEval<string>(MENU, '(element.querySelector(".monaco-list-row.focused")?.ariaLabel) ?? ""');
  for (let row = 0; row < 20 && !(await focused()).startsWith(title); row++) await press('ArrowDown');
  assert.ok((await focused()).startsWith(title), `${title}: ${await workbenchText(MENU)}`);
  await press('Enter');
}
