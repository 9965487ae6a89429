// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import { namesPicture } from '../../book/discovery/extensions';
import type { CheckerAnswers } from '../../shared/checker-protocol';
import type { PlaceEdit } from '../../shared/layout-places';
import type { Book } from '../book';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { told } from '../convert';
import { firstReasons, toSave } from '../convert/words';
import { openTextsThatName } from './open-texts';
import { type Changed, fitting, relink } from './relink';

type Renamed = readonly { oldUri: vscode.Uri; newUri: vscode.Uri }[];
type Answer = CheckerAnswers['renaming']['answer'];

/**
 * A picture, a layout, or a folder of them, that gets another name in the editor takes its lines along, where the person
 * wants it: asked once, by a message. What names it is looked for before, while every path still leads to it.
 */
export function registerRenaming(books: Books, checker: CheckerClient): vscode.Disposable {
  let found: { book: Book; answer: Answer }[] = [];
  return vscode.Disposable.from(
    vscode.workspace.onWillRenameFiles(event => {
      found = [];
      for (const book of books.all) {
        const names = namesIn(book, event.files);
        if (!names.length || !book.answer?.summary) continue;
        const question = { root: book.root.fsPath, names, open: openTextsThatName(book) };
        event.waitUntil(
          checker.ask('renaming', question).then(
            answer => void found.push({ book, answer }),
            // the picture gets its name all the same, and its lines tell that it is missing
            () => {},
          ),
        );
      }
    }),
    vscode.workspace.onDidRenameFiles(({ files }) => {
      for (const { book, answer } of found.splice(0)) void told(() => offer(files, book, answer));
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

async function offer(files: Renamed, book: Book, { edits, left }: Answer) {
  const t = vscode.l10n.t;
  const reasons = firstReasons(left);
  if (!edits.length) {
    if (reasons.length) void vscode.window.showWarningMessage(reasons.join(' '));
    return;
  }
  const change = t('Change the lines');
  const words = [consequence(files, book, edits), ...reasons].join(' ');
  // one that asks stays in sight only as an error, and in print it would be one
  if ((await vscode.window.showErrorMessage(words, change)) !== change) return;
  const unchanged = () => fitting(book.root, edits);
  const changed = await relink(book.root, await unchanged(), unchanged);
  tellChanged(edits, changed, reasons);
}

function consequence(files: Renamed, { settings }: Book, edits: readonly PlaceEdit[]): string {
  const t = vscode.l10n.t;
  const texts = filesOf(edits);
  const name = (some: string) => (files.length === 1 ? path.posix.basename(files[0].oldUri.path) : some);
  if (files.every(({ oldUri }) => namesPicture(oldUri.path)))
    return t(
      '{0} would be missing in print: the old name still stands in {1}.',
      name(t('Some pictures')),
      texts,
    );
  if (texts !== path.posix.basename(settings.path))
    return t(
      'Pictures would be missing in print: after the renaming, paths in {0} do not lead to them.',
      texts,
    );
  return t(
    '{0} would not count as before, and pictures might go to print unchecked: the old name still stands in {1}.',
    name(t('Some files')),
    texts,
  );
}

/** Nothing where all was changed and saved that was asked for: the lines show it. */
function tellChanged(edits: readonly PlaceEdit[], changed: Changed<PlaceEdit>, reasons: readonly string[]) {
  const missed = edits.filter(edit => !changed.edits.includes(edit));
  const words = vscode.l10n.t(
    'Left as they are: {0} of {1} lines, in {2}. Look at them: a picture may be missing in print.',
    missed.length,
    edits.length,
    filesOf(missed),
  );
  const all = [...(missed.length ? [words] : []), ...reasons, ...toSave(changed)].join(' ');
  if (missed.length || reasons.length || changed.notSaved.length) void vscode.window.showWarningMessage(all);
  else if (all) void vscode.window.showInformationMessage(all);
}

const filesOf = (edits: readonly PlaceEdit[]) => [...new Set(edits.map(({ file }) => file))].join(', ');
