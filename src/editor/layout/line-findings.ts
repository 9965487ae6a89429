// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import type { Place } from '../../shared/layout-places';
import { findingDiagnostic, plainDiagnostic, related } from '../diagnostics';
import type { Layout, LayoutPlaces } from './places';
import { rangeOf } from './ranges';

/** What is found on a picture stands on every line that places it, too: there the editor offers what can be done. */
export function registerLineFindings(places: LayoutPlaces): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection('evengrey-layouts');
  return vscode.Disposable.from(
    collection,
    places.onDidChange(layout => collection.set(layout.uri, layout.places.flatMap(onPlace(layout)))),
    places.onDidRemove(uri => collection.delete(uri)),
  );
}

const onPlace =
  ({ book }: Layout) =>
  (place: Place): vscode.Diagnostic[] => {
    const range = rangeOf(place);
    const { picture, isThere, findings } = place;
    if (picture === null) return [plainDiagnostic(range, outside(), vscode.DiagnosticSeverity.Information)];
    return findings.map(finding => {
      const message = `${path.posix.basename(picture)}: ${finding.message}`;
      const diagnostic = findingDiagnostic({ ...finding, message }, range, 'text');
      if (isThere)
        diagnostic.relatedInformation = [related(vscode.Uri.joinPath(book.root, picture), picture)];
      return diagnostic;
    });
  };

const outside = () =>
  vscode.l10n.t(
    "This picture lies outside the book's folder and was not looked at. Copy it into the folder, and place the copy.",
  );
