// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Summary } from '../shared/finding';
import type { Book } from './book';
import { bookInFront, onDidTurnPage } from './book-in-front';
import type { Books } from './books';
import { folderName } from './folder-name';

/** One line for the book in front: counts, its name where there are several, and a click to what can be done. None without. */
export function registerStatus(books: Books): vscode.Disposable {
  const item = vscode.window.createStatusBarItem('evengrey.status', vscode.StatusBarAlignment.Left, 10);
  item.name = 'Evengrey';

  function update() {
    const book = bookInFront(books) ?? books.all[0];
    if (!book) return item.hide();
    const { icon, words, told, command } = describe(book);
    const name = books.all.length > 1 ? `${folderName(book.root)}: ` : '';
    const tooltip = `${name}${told}`;
    Object.assign(item, {
      ...{ text: `$(${icon}) ${name}${words}`, command },
      tooltip: book.answer?.summary?.pictures ? leadingOn(tooltip) : tooltip,
      accessibilityInformation: { label: `Evengrey: ${tooltip}` },
    });
    item.show();
  }

  return vscode.Disposable.from(
    item,
    books.onDidChange(update),
    books.onDidRemove(update),
    onDidTurnPage(update),
    vscode.window.tabGroups.onDidChangeTabs(update),
  );
}

/** The words, and below them the way to all pictures. */
function leadingOn(words: string): vscode.MarkdownString {
  const tooltip = new vscode.MarkdownString().appendText(words);
  tooltip.isTrusted = { enabledCommands: ['evengrey.showBook'] };
  return tooltip.appendMarkdown(`\n\n[${vscode.l10n.t('Show the Whole Book')}](command:evengrey.showBook)`);
}

interface Described {
  icon: string;
  words: string;
  /** Of those who point at it. */
  told: string;
  command: vscode.Command;
}

function describe({ state, settings }: Book): Described {
  const problems = { title: '', command: 'workbench.actions.view.problems' };
  const openSettings = { title: '', command: 'vscode.open', arguments: [settings] };
  const t = vscode.l10n.t;
  if (state.kind === 'unchecked')
    return {
      icon: 'circle-outline',
      words: t('Evengrey'),
      told: t('The book has not been checked yet. Click to check it.'),
      command: { title: '', command: 'evengrey.check' },
    };
  if (state.kind === 'checking') {
    const { done, total } = state.progress ?? { done: 0, total: 0 };
    const text = total ? t('{0} of {1} pictures', done, total) : t('Evengrey');
    return { icon: 'loading~spin', words: text, told: t('The pictures are being read.'), command: problems };
  }
  if (state.kind === 'failed')
    return {
      icon: 'error',
      words: t('Evengrey'),
      told: t('The book could not be checked: {0} Click to try again.', state.message),
      command: { title: '', command: 'evengrey.check' },
    };
  const { summary } = state.answer;
  if (!summary)
    return {
      icon: 'error',
      words: t('Evengrey settings'),
      told: t('evengrey.json cannot be used, so nothing was checked. Click to open it.'),
      command: openSettings,
    };
  if (summary.pictures === 0)
    return {
      icon: 'circle-slash',
      words: t('No pictures'),
      told: t('evengrey.json names no picture that is there. Click to open it.'),
      command: openSettings,
    };
  return { ...counts(summary, state.answer.attention), command: problems };
}

/** Pictures are counted here as on the book's one screen; findings only beside them, since one picture has several. */
function counts(
  { pictures, errors, warnings, notes, waived }: Summary,
  attention: number,
): Omit<Described, 'command'> {
  const t = vscode.l10n.t;
  if (errors + warnings === 0)
    return {
      icon: 'check',
      words: pictures === 1 ? t('1 picture') : t('{0} pictures', pictures),
      told: waived
        ? t(
            '{0} pictures, nothing to put right but what is waived ({1}), {2} notes. A test print comes before the run.',
            pictures,
            waived,
            notes,
          )
        : t(
            '{0} pictures, nothing to put right, {1} notes. A test print comes before the run.',
            pictures,
            notes,
          ),
    };
  return {
    icon: 'warning',
    words: attention
      ? t('{0} of {1} pictures to put right', attention, pictures)
      : t('The book to put right'),
    told: t(
      '{0} of {1} pictures want attention. Findings: {2} errors, {3} warnings, {4} notes; the Problems panel has each on every line that places its picture, too. Click to see them.',
      attention,
      pictures,
      errors,
      warnings,
      notes,
    ),
  };
}
