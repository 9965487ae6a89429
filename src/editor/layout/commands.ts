// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { PlacedFinding } from '../../shared/layout-places';
import type { RemedyEncoding } from '../../shared/remedy';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { carryOut, mayWrite, told } from '../convert';
import { writeChanges } from '../write-changes';

/** Behind links and quick fixes: in no palette, since each needs to be told its picture. */
export const OPEN_PICTURE = 'evengrey.layout.openPicture';
export const CONVERT_AND_PLACE = 'evengrey.layout.convertAndPlace';

/** Lists a picture in the settings of its book as one whose tone or colour is meant. */
export const LIST_MEANT = 'evengrey.layout.listMeant';

type Meant = NonNullable<PlacedFinding['meant']>;

/** A picture's address as letters that no link undoes or changes on its way. */
export const pictureId = (picture: vscode.Uri): string =>
  Buffer.from(picture.toString()).toString('base64url');

export function registerLayoutCommands(books: Books, checker: CheckerClient): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand(OPEN_PICTURE, (id: string) => {
      const picture = vscode.Uri.parse(Buffer.from(id, 'base64url').toString(), true);
      return vscode.commands.executeCommand('evengrey.openPreview', picture);
    }),
    vscode.commands.registerCommand(CONVERT_AND_PLACE, (pictures: vscode.Uri[], to: RemedyEncoding) =>
      convertAndPlace(pictures, to, books, checker),
    ),
    vscode.commands.registerCommand(LIST_MEANT, (picture: vscode.Uri, meant: Meant) =>
      listMeant(picture, meant, books, checker),
    ),
  );
}

/** Converts beside the pictures, and has the layouts of their book place the results. */
async function convertAndPlace(
  pictures: readonly vscode.Uri[],
  to: RemedyEncoding,
  books: Books,
  checker: CheckerClient,
) {
  const book = books.of(pictures[0]);
  if (!book || !(await mayWrite(pictures))) return;
  return told(async () => {
    const question = { file: pictures[0].fsPath, root: book.root.fsPath };
    const [usual] = (await checker.ask('remedies', question)).methods;
    const asked = {
      ...{ to, method: usual.id, where: { kind: 'beside' as const, relink: true } },
      spares: pictures.length > 1,
    };
    return carryOut(pictures, asked, book, checker);
  });
}

async function listMeant(picture: vscode.Uri, meant: Meant, books: Books, checker: CheckerClient) {
  const book = books.of(picture);
  if (!book) return;
  await told(async () => {
    const document = await vscode.workspace.openTextDocument(book.settings);
    const name = picture.path.slice(book.root.path.length + 1);
    const changes = await checker.ask('listMeant', { picture: name, meant, text: document.getText() });
    await writeChanges(book.settings, document, changes);
  });
}
