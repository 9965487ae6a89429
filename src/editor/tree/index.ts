// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Books } from '../books';
import { WAIVE } from '../waive';
import type { By } from './groups';
import { type Row, uriOf } from './items';
import { BookTree } from './provider';
import { countsOf, standingOf } from './standing';

const VIEW = 'evengrey.book';
/** Where it is remembered what the pictures are grouped by. */
const BY = 'evengrey.tree.by';

/** The pictures of the book in the explorer, by finding or by encoding. It shows what the last check told. */
export function registerTree(books: Books, memory: vscode.Memento): vscode.Disposable {
  const tree = new BookTree(books, memory.get<By>(BY, 'finding'));
  const view = vscode.window.createTreeView<Row>(VIEW, {
    treeDataProvider: tree,
    showCollapseAll: true,
    canSelectMany: true,
  });
  const context = (key: string, value: unknown) =>
    void vscode.commands.executeCommand('setContext', key, value);

  function tell() {
    context('evengrey.tree.by', tree.by);
    context('evengrey.tree.filtered', tree.filter !== '');
    const standing = standingOf(books.all, tree);
    context('evengrey.tree.standing', standing);
    // of several each row of a book says it of its own: one may lie in another, which has its pictures too
    const [book, ...others] = books.all;
    const counts = book && !others.length ? countsOf(book) : '';
    view.description = standing === 'filtered' ? noneWith(tree.filter) : counts;
    // a message would stand in the place of the words that an empty tree has
    view.message =
      tree.filter && standing === 'full'
        ? vscode.l10n.t('Shown are pictures with "{0}".', tree.filter)
        : undefined;
  }

  function fill() {
    tree.refresh();
    tell();
  }

  function group(by: By) {
    tree.by = by;
    void memory.update(BY, by);
    tell();
  }

  function filter(text: string) {
    tree.filter = text;
    tell();
  }

  tell();
  return vscode.Disposable.from(
    tree,
    view,
    // while pictures are read nothing is new but their number
    books.onDidChange(({ state }) => (state.kind === 'checking' ? tell() : fill())),
    books.onDidRemove(fill),
    vscode.commands.registerCommand('evengrey.tree.byFinding', () => group('finding')),
    vscode.commands.registerCommand('evengrey.tree.byEncoding', () => group('encoding')),
    vscode.commands.registerCommand('evengrey.tree.filter', () => askFilter(tree.filter, filter)),
    vscode.commands.registerCommand('evengrey.tree.showAll', () => filter('')),
    vscode.commands.registerCommand('evengrey.tree.convert', (row?: Row, rows?: Row[]) => {
      const pictures = picturesOf(rows?.length ? rows : row ? [row] : view.selection);
      if (pictures.length) return vscode.commands.executeCommand('evengrey.convert', pictures[0], pictures);
    }),
    vscode.commands.registerCommand('evengrey.tree.waive', (row: Row) => {
      if (row.kind === 'picture')
        return vscode.commands.executeCommand(WAIVE, uriOf(row.book, row.leaf), row.group.id);
    }),
    vscode.commands.registerCommand('evengrey.tree.explain', (row: Row) => {
      const rule = row.kind === 'told' ? row.finding.rule : row.kind === 'group' ? row.group.id : undefined;
      return vscode.commands.executeCommand('evengrey.explainRule', rule);
    }),
  );
}

/** Beside the tree's name, since the words below it cannot say what was searched. */
const noneWith = (filter: string): string => vscode.l10n.t('none with "{0}"', filter);

/** The pictures of some rows, each once. */
function picturesOf(rows: readonly Row[]): vscode.Uri[] {
  const uris = rows.flatMap(row => {
    if (row.kind === 'picture') return [uriOf(row.book, row.leaf)];
    return row.kind === 'group' ? row.group.pictures.map(leaf => uriOf(row.book, leaf)) : [];
  });
  return [...new Map(uris.map(uri => [uri.toString(), uri])).values()];
}

/** The tree follows what is typed; given up, it is as before. */
function askFilter(before: string, filter: (text: string) => void) {
  const input = vscode.window.createInputBox();
  input.title = vscode.l10n.t('Show Only Pictures With');
  input.placeholder = vscode.l10n.t('words of a path, an encoding or a finding');
  input.value = before;
  let kept = before;
  input.onDidChangeValue(filter);
  input.onDidAccept(() => {
    kept = input.value.trim();
    input.hide();
  });
  input.onDidHide(() => {
    filter(kept);
    input.dispose();
  });
  input.show();
}
