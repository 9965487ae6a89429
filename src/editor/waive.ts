// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import type { Books } from './books';
import { Cancelled, type CheckerClient } from './checker-client';

/** What the team has decided to live with. */
export const WAIVERS = '.evengrey-waivers.json';
/** Behind a quick fix and a menu: in no palette, since it needs to be told its picture and its rule. */
export const WAIVE = 'evengrey.waive';

export function registerWaiving(books: Books, checker: CheckerClient): vscode.Disposable {
  return vscode.commands.registerCommand(WAIVE, async (picture: vscode.Uri, rule: string) => {
    const book = books.of(picture);
    if (!book) return;
    const reason = await askReason(picture, rule);
    if (reason === undefined) return;
    try {
      const file = vscode.Uri.joinPath(book.root, WAIVERS);
      const document = await documentOf(file);
      const changes = await checker.ask('waive', {
        root: book.root.fsPath,
        picture: path.relative(book.root.fsPath, picture.fsPath).split(path.sep).join('/'),
        rule,
        reason,
        text: document?.getText() ?? null,
      });
      await write(file, document, changes);
    } catch (error) {
      if (!(error instanceof Cancelled)) void vscode.window.showErrorMessage((error as Error).message);
    }
  });
}

/** Undefined: it is not to be waived after all. */
const askReason = (picture: vscode.Uri, rule: string) =>
  vscode.window.showInputBox({
    title: vscode.l10n.t('Waive {0} on {1}', rule, path.posix.basename(picture.path)),
    prompt: vscode.l10n.t(
      'Why can your team live with it? It stands in {0}; when the picture or the finding changes, it is told again.',
      WAIVERS,
    ),
    ignoreFocusOut: true,
  });

async function documentOf(file: vscode.Uri): Promise<vscode.TextDocument | undefined> {
  try {
    await vscode.workspace.fs.stat(file);
  } catch {
    return undefined;
  }
  return vscode.workspace.openTextDocument(file);
}

/** Through the editor, so that it can be undone; what a person has not saved there stays for that person to save. */
async function write(
  file: vscode.Uri,
  document: vscode.TextDocument | undefined,
  changes: readonly { offset: number; length: number; content: string }[],
) {
  const edit = new vscode.WorkspaceEdit();
  if (!document)
    edit.createFile(file, { contents: Buffer.from(changes.map(({ content }) => content).join('')) });
  else
    for (const { offset, length, content } of changes) {
      const range = new vscode.Range(document.positionAt(offset), document.positionAt(offset + length));
      edit.replace(file, range, content);
    }
  const unsaved = document?.isDirty ?? false;
  if (!(await vscode.workspace.applyEdit(edit))) throw new Error(`${WAIVERS} could not be changed.`);
  if (document && !unsaved) await document.save();
  else if (unsaved) await vscode.window.showTextDocument(document!);
}
