// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';
import type { Books } from '../books';
import type { CheckerClient } from '../checker-client';
import { pick } from '../convert/pick';
import { folderName } from '../folder-name';
import { fileInFront } from '../picture-in-front';

interface Candidate {
  folder: vscode.Uri;
  pictures: number;
}

/**
 * The folder that first settings are for: the one that was clicked, that holds the file in front, or is the only one, else
 * the one a person picks. Where all have settings, a folder that has them; undefined where the person gave up.
 * @param clicked null: none, so that it is one of `within`
 */
export async function whichFolder(
  clicked: vscode.Uri | null,
  within: readonly vscode.Uri[],
  books: Books,
  checker: CheckerClient,
): Promise<vscode.Uri | undefined> {
  await books.find();
  const roots = within.filter(folder => folder.scheme === 'file' && !books.at(folder));
  const candidates = (await Promise.all(roots.map(root => candidatesIn(root, checker)))).flat();
  if (candidates.some(({ folder }) => folder.path === clicked?.path)) return clicked!;
  const front = fileInFront();
  const around = candidates.filter(({ folder }) => front?.path.startsWith(`${folder.path}/`));
  if (!candidates.length) return settledFolder(within[0], front, books);
  const certain = around.length === 1 ? around : candidates;
  return certain.length === 1 ? certain[0].folder : picked(candidates, around.at(-1));
}

async function candidatesIn(root: vscode.Uri, checker: CheckerClient): Promise<Candidate[]> {
  const found = await checker.ask('bookFolders', { root: root.fsPath });
  return found.map(({ path: at, pictures }) => ({ folder: vscode.Uri.joinPath(root, at), pictures }));
}

/** Where there is nothing to be written, the settings that are there are opened. */
function settledFolder(asked: vscode.Uri, front: vscode.Uri | undefined, books: Books): vscode.Uri {
  const book =
    books.at(asked) ?? (front && books.of(front)) ?? books.all.find(({ root }) => isBelow(root, asked));
  return book?.root ?? asked;
}

const isBelow = (folder: vscode.Uri, above: vscode.Uri) => folder.path.startsWith(`${above.path}/`);

async function picked(all: readonly Candidate[], likely: Candidate | undefined) {
  const t = vscode.l10n.t;
  const answer = await pick({
    ...{ title: t('First settings of a book'), placeholder: t('Which folder holds the book?') },
    ...{ step: 1, steps: 1 },
    options: all.map(({ folder, pictures }) => ({
      value: folder,
      label: folderName(folder),
      description: pictures === 1 ? t('1 picture') : t('{0} pictures', pictures),
    })),
    chosen: likely?.folder,
  });
  return answer && answer !== 'back' ? answer.value : undefined;
}
