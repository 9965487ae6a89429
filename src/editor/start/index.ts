// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { makeDemoBook } from './demo';
import { writeSettings } from './first-settings';
import { tellNoBook } from './no-book';

/** What a person begins with. Nothing of it comes by itself. */
export function registerStart(books: Books, checker: CheckerClient): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('evengrey.writeSettings', (named?: unknown) =>
      writeSettings(books, checker, named instanceof vscode.Uri ? named : undefined),
    ),
    vscode.commands.registerCommand('evengrey.makeDemo', () => makeDemoBook(books, checker)),
    vscode.commands.registerCommand('evengrey.openSomePicture', () => openSomePicture(books)),
  );
}

/** For whoever has chosen none: the page of a picture with findings, else of the first one. */
async function openSomePicture(books: Books): Promise<void> {
  const known = books.all.find(({ answer }) => answer?.entries.length);
  if (!known) return void tellNoBook();
  const { pictures, entries } = known.answer!;
  const faulty = pictures.find(({ findings }) => findings.some(({ rule }) => rule === 'residual-chroma'));
  const { path } = faulty ?? pictures[0] ?? entries[0];
  await vscode.commands.executeCommand('evengrey.openPreview', vscode.Uri.joinPath(known.root, path));
}
