// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import { layoutExtensions } from '../../layout/kinds';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { registerLayoutCommands } from './commands';
import { hoverProvider } from './hover';
import { registerLineFindings } from './line-findings';
import { LayoutPlaces } from './places';
import { quickFixProvider } from './quick-fixes';
import { registerRenaming } from './renamed';
import { registerUndone } from './undone';

/** Sources that lay a book out: there the person is who can do something about a picture. Without a book nothing is. */
export function registerLayouts(books: Books, checker: CheckerClient): vscode.Disposable {
  const places = new LayoutPlaces(books, checker);
  const layouts: vscode.DocumentSelector = {
    scheme: 'file',
    pattern: `**/*.{${layoutExtensions.flatMap(end => [end, end.toUpperCase()]).join(',')}}`,
  };
  return vscode.Disposable.from(
    places,
    registerLineFindings(places),
    registerLayoutCommands(books, checker),
    registerUndone(),
    registerRenaming(books, checker),
    vscode.languages.registerHoverProvider(layouts, hoverProvider(places, checker)),
    vscode.languages.registerCodeActionsProvider(layouts, quickFixProvider(places), {
      providedCodeActionKinds: [vscode.CodeActionKind.QuickFix],
    }),
  );
}
