// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import { registerBookFixes } from './book-fixes';
import { Books } from './books';
import { CheckerClient } from './checker-client';
import { registerCommands } from './commands';
import { registerConverting } from './convert';
import { registerFindings } from './findings';
import { registerLayouts } from './layout';
import { registerOverview } from './overview';
import { registerPictureEditors } from './picture-editor';
import { registerReview } from './review';
import { registerRulePages } from './rule-pages';
import { registerStart } from './start';
import { registerStatus } from './status';
import { registerTree } from './tree';
import { registerWaiving } from './waive';

/** Starts no process and reads no picture: that waits for a book, or for somebody who opens a preview. */
export function activate({ extensionUri, subscriptions, workspaceState }: vscode.ExtensionContext) {
  const log = vscode.window.createOutputChannel('Evengrey');
  const program = vscode.Uri.joinPath(extensionUri, 'dist', 'checker.js').fsPath;
  const checker = new CheckerClient(program, line => log.append(line));
  const books = new Books(checker);
  subscriptions.push(
    log,
    checker,
    books,
    registerFindings(books),
    registerBookFixes(books),
    registerStatus(books),
    registerRulePages(checker),
    registerPictureEditors(extensionUri, books, checker),
    registerCommands(books),
    registerStart(books, checker),
    registerConverting(books, checker),
    registerLayouts(books, checker),
    registerOverview(extensionUri, books, checker),
    registerReview(extensionUri, books, checker),
    registerTree(books, workspaceState),
    registerWaiving(books, checker),
  );
  void books.find();
}
