import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { inWorkspace, until } from '../../editor';

/** Writes a text on the disk; the editor follows that in its own time. */
export async function write(file: string, text: string) {
  await fs.writeFile(inWorkspace(file).fsPath, text);
  await until(
    `the text of ${file}`,
    async () => (await vscode.workspace.openTextDocument(inWorkspace(file))).getText(),
    now => now === text,
  );
}
