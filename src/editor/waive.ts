// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import type { Books } from './books';
import { Cancelled, type CheckerClient } from './checker-client';
import { documentOf, writeChanges } from './write-changes';

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
      await writeChanges(file, document, changes);
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
