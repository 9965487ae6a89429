// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { CheckAnswer } from '../shared/checker-protocol';
import type { Book } from './book';
import type { Books } from './books';

/**
 * What can be done in the settings of a book: where the findings about the whole of it stand, at the top, and where a word
 * is none of those that can stand there.
 */
export function registerBookFixes(books: Books): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(
    { scheme: 'file', pattern: '**/evengrey.json' },
    {
      provideCodeActions(document, _range, { diagnostics }) {
        const book = books.all.find(({ settings }) => settings.toString() === document.uri.toString());
        if (!book?.answer) return;
        const words = meantWords(document, book.answer, diagnostics);
        return vscode.workspace.isTrusted
          ? [...words, ...conversions(book, book.answer, diagnostics)]
          : words;
      },
    },
    { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] },
  );
}

type Diagnostics = readonly vscode.Diagnostic[];

/** The word that was probably meant in the place of one that is unknown. */
function meantWords(
  document: vscode.TextDocument,
  { settings, slips }: CheckAnswer,
  diagnostics: Diagnostics,
) {
  return diagnostics.flatMap(about => {
    const { message, range } = about;
    const found = [...settings, ...slips].find(
      problem =>
        problem.suggestion &&
        problem.message === message &&
        problem.line === range.start.line + 1 &&
        problem.column === range.start.character + 1,
    );
    if (!found) return [];
    const word = found.suggestion!;
    const fix = new vscode.CodeAction(
      vscode.l10n.t('Write "{0}" instead', word),
      vscode.CodeActionKind.QuickFix,
    );
    fix.edit = new vscode.WorkspaceEdit();
    const quoted = document.getText(range).startsWith('"');
    fix.edit.replace(document.uri, range, quoted ? JSON.stringify(word) : word);
    fix.diagnostics = [about];
    fix.isPreferred = true;
    return [fix];
  });
}

function conversions({ root }: Book, { book }: CheckAnswer, diagnostics: Diagnostics) {
  return book.flatMap(({ message, convert }) => {
    const about = diagnostics.filter(diagnostic => diagnostic.message === message);
    if (!about.length || !convert.length) return [];
    const pictures = convert.map(path => vscode.Uri.joinPath(root, path));
    const title =
      pictures.length === 1
        ? vscode.l10n.t('Convert {0}...', convert[0])
        : vscode.l10n.t('Convert the {0} pictures...', pictures.length);
    const fix = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
    fix.command = { title, command: 'evengrey.convert', arguments: [pictures[0], pictures] };
    fix.diagnostics = about;
    return [fix];
  });
}
