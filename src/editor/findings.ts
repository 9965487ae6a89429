// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { CheckAnswer, LocatedProblem } from '../shared/checker-protocol';
import type { Severity } from '../shared/finding';
import type { ShownFinding } from '../shared/sheet';
import type { Book } from './book';
import type { Books } from './books';
import { rulePage } from './rule-pages';

const SOURCE = 'Evengrey';
const severities: Record<Severity, vscode.DiagnosticSeverity> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  // a hint would not be listed
  note: vscode.DiagnosticSeverity.Information,
};

/** Keeps the Problems panel as the books are: what is found appears, changes and goes. */
export function registerFindings(books: Books): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection('evengrey');
  /** What is shown for each book, so that what is gone can be taken away. */
  const shown = new Map<Book, vscode.Uri[]>();

  function clear(book: Book) {
    for (const uri of shown.get(book) ?? []) collection.delete(uri);
    shown.delete(book);
  }

  function show(book: Book) {
    if (book.state.kind !== 'checked') return;
    const entries = entriesOf(book, book.state.answer);
    const kept = new Set(entries.map(([uri]) => uri.toString()));
    const gone = (shown.get(book) ?? []).filter(uri => !kept.has(uri.toString()));
    collection.set([...entries, ...gone.map((uri): [vscode.Uri, undefined] => [uri, undefined])]);
    shown.set(
      book,
      entries.map(([uri]) => uri),
    );
  }

  return vscode.Disposable.from(collection, books.onDidChange(show), books.onDidRemove(clear));
}

function entriesOf(book: Book, answer: CheckAnswer): [vscode.Uri, vscode.Diagnostic[]][] {
  const byFile = new Map<string, vscode.Diagnostic[]>();
  const add = (path: string, diagnostic: vscode.Diagnostic) =>
    byFile.set(path, [...(byFile.get(path) ?? []), diagnostic]);
  for (const found of answer.settings) add(found.file, problem(found));
  for (const found of answer.book) add('evengrey.json', finding(found, 'text'));
  for (const { path, findings } of answer.pictures)
    for (const found of findings) add(path, finding(found, 'picture'));
  return [...byFile].map(([path, diagnostics]) => [vscode.Uri.joinPath(book.root, path), diagnostics]);
}

/**
 * A picture has no text to mark: its finding stands at the top. The rule's name is a link: on a picture a command; on
 * text, where the editor's own hover follows no command link, the address of the rule's page.
 */
function finding({ rule, severity, message }: ShownFinding, on: 'picture' | 'text'): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(new vscode.Range(0, 0, 0, 1), message, severities[severity]);
  diagnostic.source = SOURCE;
  diagnostic.code = { value: rule, target: on === 'picture' ? explainLink(rule) : rulePage(rule) };
  return diagnostic;
}

/** Rule names need no escaping, which would be undone once too often on the way. */
const explainLink = (rule: string) => vscode.Uri.parse(`command:evengrey.explainRule?["${rule}"]`);

function problem({ line, column, length, message }: LocatedProblem): vscode.Diagnostic {
  const range = new vscode.Range(line - 1, column - 1, line - 1, column - 1 + Math.max(1, length));
  const diagnostic = new vscode.Diagnostic(range, message, vscode.DiagnosticSeverity.Error);
  diagnostic.source = SOURCE;
  return diagnostic;
}
