// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Books } from './books';

/** What can be done where the findings about a whole book stand, at the top of its settings. */
export function registerBookFixes(books: Books): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(
    { scheme: 'file', pattern: '**/evengrey.json' },
    {
      provideCodeActions({ uri }, _range, { diagnostics }) {
        const book = books.all.find(({ settings }) => settings.toString() === uri.toString());
        if (!book?.answer || !vscode.workspace.isTrusted) return;
        return book.answer.book.flatMap(({ message, convert }) => {
          const about = diagnostics.filter(diagnostic => diagnostic.message === message);
          if (!about.length || !convert.length) return [];
          const pictures = convert.map(path => vscode.Uri.joinPath(book.root, path));
          const title =
            pictures.length === 1
              ? vscode.l10n.t('Convert {0}...', convert[0])
              : vscode.l10n.t('Convert the {0} pictures...', pictures.length);
          const fix = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
          fix.command = { title, command: 'evengrey.convert', arguments: [pictures[0], pictures] };
          fix.diagnostics = about;
          return [fix];
        });
      },
    },
    { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] },
  );
}
