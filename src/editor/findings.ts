// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { CheckAnswer, LocatedProblem } from '../shared/checker-protocol';
import type { Book } from './book';
import type { Books } from './books';
import { atTheTop, findingDiagnostic, plainDiagnostic, related } from './diagnostics';
import { WAIVERS } from './waive';

/** So many pictures that no layout places can be opened from where they are told. */
const MOST_RELATED = 50;

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
  for (const found of answer.slips) add(found.file, problem(found, vscode.DiagnosticSeverity.Warning));
  for (const found of answer.waivers.problems) add(found.file, problem(found));
  for (const told of answer.waivers.notices)
    add(WAIVERS, plainDiagnostic(atTheTop, told, vscode.DiagnosticSeverity.Information));
  for (const found of answer.book) add('evengrey.json', findingDiagnostic(found, atTheTop, 'text'));
  if (answer.unplaced) add('evengrey.json', unplaced(book, answer.unplaced));
  for (const { path, told } of answer.outdated)
    add(path, plainDiagnostic(atTheTop, told, vscode.DiagnosticSeverity.Warning));
  for (const { path, findings } of answer.pictures)
    for (const found of findings) add(path, findingDiagnostic(found, atTheTop, 'picture'));
  return [...byFile].map(([path, diagnostics]) => [vscode.Uri.joinPath(book.root, path), diagnostics]);
}

/** Told once for all of them: no verdict, but a person would want to know. */
function unplaced({ root }: Book, { paths, told }: NonNullable<CheckAnswer['unplaced']>): vscode.Diagnostic {
  const diagnostic = plainDiagnostic(atTheTop, told, vscode.DiagnosticSeverity.Information);
  diagnostic.relatedInformation = paths
    .slice(0, MOST_RELATED)
    .map(path => related(vscode.Uri.joinPath(root, path), path));
  return diagnostic;
}

function problem(
  { line, column, length, message }: LocatedProblem,
  severity = vscode.DiagnosticSeverity.Error,
): vscode.Diagnostic {
  const range = new vscode.Range(line - 1, column - 1, line - 1, column - 1 + Math.max(1, length));
  return plainDiagnostic(range, message, severity);
}
