// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import type { PlaceEdit } from '../../shared/layout-places';
import type { Book } from '../book';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { openTextsThatName } from './open-texts';
import { relink } from './relink';

type Renamed = readonly { oldUri: vscode.Uri; newUri: vscode.Uri }[];

/**
 * A picture, or a folder of them, that gets another name in the editor takes its lines along, where the person wants it:
 * asked once, by a message. What names it is looked for before, while every path still leads to it.
 */
export function registerRenaming(books: Books, checker: CheckerClient): vscode.Disposable {
  let found: { book: Book; edits: PlaceEdit[] }[] = [];
  return vscode.Disposable.from(
    vscode.workspace.onWillRenameFiles(event => {
      found = [];
      for (const book of books.all) {
        const names = namesIn(book, event.files);
        if (!names.length || !book.answer?.summary) continue;
        const question = { root: book.root.fsPath, names, open: openTextsThatName(book) };
        event.waitUntil(
          checker.ask('renaming', question).then(
            edits => void (edits.length && found.push({ book, edits })),
            // the picture gets its name all the same, and its lines tell that it is missing
            () => {},
          ),
        );
      }
    }),
    vscode.workspace.onDidRenameFiles(({ files }) => {
      for (const { book, edits } of found.splice(0)) void offer(files, book, edits);
    }),
  );
}

const namesIn = (book: Book, files: Renamed) =>
  files.flatMap(({ oldUri, newUri }) =>
    book.contains(oldUri) && book.contains(newUri)
      ? { from: within(book, oldUri), to: within(book, newUri) }
      : [],
  );

const within = ({ root }: Book, { path }: vscode.Uri) => path.slice(root.path.length + 1);

async function offer(files: Renamed, book: Book, edits: PlaceEdit[]) {
  const t = vscode.l10n.t;
  const name = files.length === 1 ? path.posix.basename(files[0].oldUri.path) : t('Some pictures');
  const texts = [...new Set(edits.map(({ file }) => file))].join(', ');
  const change = t('Change the lines');
  const words = t('{0} would be missing in print: the old name still stands in {1}.', name, texts);
  if ((await vscode.window.showInformationMessage(words, change)) !== change) return;
  const { unsaved } = await relink(book.root, edits, async () => []);
  if (unsaved.length)
    void vscode.window.showInformationMessage(
      t(
        'Changes of yours were not saved in {0}: the line is changed there too, save it.',
        unsaved.join(', '),
      ),
    );
}
