// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import { encodingName } from '../../rules/words';
import type { Severity } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import type { ShownFinding } from '../../shared/sheet';
import type { Book } from '../book';
import { folderName } from '../folder-name';
import { type Group, type Leaf, NOTHING_FOUND } from './groups';
import { countsOf } from './standing';

/** What stands in a row. */
export type Row =
  | { kind: 'book'; book: Book }
  | { kind: 'group'; book: Book; group: Group }
  | { kind: 'told'; book: Book; finding: ShownFinding; at: number }
  | { kind: 'picture'; book: Book; group: Group; leaf: Leaf };

export function itemOf(row: Row): vscode.TreeItem {
  switch (row.kind) {
    case 'book':
      return bookItem(row.book);
    case 'group':
      return groupItem(row.book, row.group);
    case 'told':
      return toldItem(row.book, row.finding, row.at);
    case 'picture':
      return pictureItem(row.book, row.group, row.leaf);
  }
}

export const uriOf = ({ root }: Book, { path }: Leaf): vscode.Uri => vscode.Uri.joinPath(root, path);

/** What is unfolded and chosen stays so when the tree is filled again: rows keep their names. */
const idOf = ({ root }: Book, ...parts: string[]) => [root.toString(), ...parts].join('\n');

const icons: Record<Severity, vscode.ThemeIcon> = {
  error: new vscode.ThemeIcon('error', new vscode.ThemeColor('list.errorForeground')),
  warning: new vscode.ThemeIcon('warning', new vscode.ThemeColor('list.warningForeground')),
  note: new vscode.ThemeIcon('info'),
};

function bookItem(book: Book): vscode.TreeItem {
  const item = new vscode.TreeItem(folderName(book.root), vscode.TreeItemCollapsibleState.Expanded);
  item.id = idOf(book);
  item.description = countsOf(book);
  item.iconPath = new vscode.ThemeIcon('book');
  return item;
}

function groupItem(book: Book, { id, severity, pictures, told }: Group): vscode.TreeItem {
  const t = vscode.l10n.t;
  const nothing = id === NOTHING_FOUND;
  const name = nothing ? t('nothing found') : id;
  const item = new vscode.TreeItem(name, vscode.TreeItemCollapsibleState.Collapsed);
  const n = pictures.length;
  const count = n === 0 ? t('the book') : n === 1 ? t('1 picture') : t('{0} pictures', n);
  item.id = idOf(book, id);
  item.description = count;
  const label = severity || nothing ? name : encodingName(id as Encoding);
  item.iconPath = severity ? icons[severity] : new vscode.ThemeIcon(nothing ? 'pass' : 'file-media');
  item.contextValue = [...(severity ? ['rule'] : []), ...(n ? ['pictures'] : [])].join(' ');
  item.tooltip = told.map(({ message }) => message).join('\n\n') || `${label}: ${count}`;
  item.accessibilityInformation = { label: [label, ...(severity ? [severity] : []), count].join(', ') };
  return item;
}

/** What is said of the book as a whole leads to its settings, where the Problems panel has it too. */
function toldItem(book: Book, { message, rule }: ShownFinding, at: number): vscode.TreeItem {
  const item = new vscode.TreeItem(vscode.l10n.t('The whole book'));
  item.id = idOf(book, rule, '', String(at));
  item.description = message;
  item.tooltip = message;
  item.iconPath = new vscode.ThemeIcon('book');
  item.contextValue = 'rule';
  item.command = { title: '', command: 'evengrey.explainRule', arguments: [rule] };
  return item;
}

function pictureItem(book: Book, group: Group, leaf: Leaf): vscode.TreeItem {
  const uri = uriOf(book, leaf);
  const item = new vscode.TreeItem(uri);
  const folder = path.posix.dirname(leaf.path);
  const worst = worstOf(leaf.findings);
  item.id = idOf(book, group.id, leaf.path);
  item.iconPath = vscode.ThemeIcon.File;
  item.description = [
    ...(group.severity || group.id === NOTHING_FOUND ? [leaf.encoding] : []),
    ...(folder === '.' ? [] : [folder]),
  ].join(' · ');
  // a note is only for knowing, and needs no waiver
  const waivable = group.severity !== null && worst !== undefined && worst.severity !== 'note';
  item.contextValue = waivable ? 'picture waivable' : 'picture';
  item.tooltip = [leaf.path, ...leaf.findings.map(({ message }) => message)].join('\n\n');
  item.accessibilityInformation = {
    label: [leaf.path, leaf.encoding, ...(worst ? [worst.severity, worst.message] : [])].join(', '),
  };
  item.command = { title: '', command: 'evengrey.openPreview', arguments: [uri] };
  return item;
}

function worstOf(findings: readonly ShownFinding[]): ShownFinding | undefined {
  const of = (wanted: Severity) => findings.find(({ severity }) => severity === wanted);
  return of('error') ?? of('warning') ?? of('note');
}
