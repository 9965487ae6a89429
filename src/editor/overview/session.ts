// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import type { FromBookPage, ToBookPage } from '../../shared/overview';
import type { Book } from '../book';
import type { Books } from '../books';
import { Cancelled, type CheckerClient } from '../checker-client';
import { type Page, showPage } from '../page-shell';
import { exportPage } from './export';

const PAGE: Page = {
  program: 'dist/book.js',
  styles: ['media/preview.css', 'media/sheet.css', 'media/overview.css'],
  className: '',
};

/** One panel with a whole book: filled when its page is ready, and again after every check. */
export class OverviewSession {
  readonly #disposables: vscode.Disposable[] = [];
  #ready = false;
  #running = new AbortController();

  constructor(
    private readonly panel: vscode.WebviewPanel,
    /** The book's folder; the book itself may go and come again. */
    private readonly root: vscode.Uri,
    private readonly books: Books,
    private readonly checker: CheckerClient,
    extension: vscode.Uri,
  ) {
    const { webview } = panel;
    const fill = (book: Book) => this.#isOurs(book) && this.#fill();
    this.#disposables.push(
      webview.onDidReceiveMessage((message: FromBookPage) => this.#receive(message)),
      panel.onDidDispose(() => this.#dispose()),
      books.onDidChange(fill),
      books.onDidRemove(fill),
    );
    panel.title = path.posix.basename(root.path);
    showPage(webview, extension, PAGE);
  }

  #isOurs({ root }: Book): boolean {
    return root.toString() === this.root.toString();
  }

  get #book(): Book | undefined {
    return this.books.all.find(book => this.#isOurs(book));
  }

  #dispose() {
    this.#running.abort();
    vscode.Disposable.from(...this.#disposables).dispose();
  }

  /** What there is to show of the book as it is now. What was shown stays while it is checked again. */
  #fill() {
    // before its `ready` the page hears nothing
    if (!this.#ready) return;
    const t = vscode.l10n.t;
    const check = { id: 'check', words: t('Check the Book') } as const;
    const settings = { id: 'settings', words: t('Open evengrey.json') } as const;
    const book = this.#book;
    if (!book)
      return this.#empty(
        t(
          'There is no book here any more: its folder {0} has no evengrey.json.',
          path.posix.basename(this.root.path),
        ),
      );
    const { state, answer } = book;
    if (state.kind === 'checking') {
      const { done, total } = state.progress ?? { done: 0, total: 0 };
      const words = total
        ? t('{0} of {1} pictures are read.', done, total)
        : t('The pictures are being read.');
      return answer ? this.#post({ type: 'busy', words }) : this.#empty(words);
    }
    if (state.kind === 'failed')
      return this.#empty(t('The book could not be checked: {0}', state.message), check);
    if (state.kind === 'unchecked') return this.#empty(t('The book has not been checked yet.'), check);
    if (!state.answer.summary)
      return this.#empty(t('evengrey.json cannot be used, so nothing was checked.'), settings);
    if (state.answer.summary.pictures === 0)
      return this.#empty(
        t(
          'No picture is in this book. Put pictures into its folder, or see what "pictures" names in evengrey.json.',
        ),
        settings,
      );
    void this.#fillOverview();
  }

  #empty(words: string, action: { id: 'check' | 'settings'; words: string } | null = null) {
    this.#post({ type: 'empty', words, action });
  }

  async #fillOverview() {
    this.#running.abort();
    const { signal } = (this.#running = new AbortController());
    await this.#answering(async () => {
      const overview = await this.checker.ask('overview', { root: this.root.fsPath }, { signal });
      const folder = path.posix.basename(this.root.path);
      if (overview) this.#post({ type: 'overview', root: this.root.toString(), folder, overview });
    });
  }

  #receive(message: FromBookPage) {
    switch (message.type) {
      case 'ready':
        this.#ready = true;
        return this.#fill();
      case 'want':
        return void this.#draw(message.pictures);
      case 'open':
        return void vscode.commands.executeCommand('evengrey.openPreview', this.#uri(message.path));
      case 'explain':
        return void vscode.commands.executeCommand('evengrey.explainRule', message.rule);
      case 'convert': {
        const pictures = message.paths.map(name => this.#uri(name));
        return void vscode.commands.executeCommand('evengrey.convert', pictures[0], pictures);
      }
      case 'export':
        return void this.export();
      case 'act':
        if (message.action === 'check') return void vscode.commands.executeCommand('evengrey.check');
        return void vscode.commands.executeCommand(
          'vscode.open',
          vscode.Uri.joinPath(this.root, 'evengrey.json'),
        );
    }
  }

  #uri(name: string): vscode.Uri {
    return vscode.Uri.joinPath(this.root, name);
  }

  #draw(pictures: Extract<FromBookPage, { type: 'want' }>['pictures']) {
    const { signal } = this.#running;
    return this.#answering(async () => {
      const contacts = await this.checker.ask('contacts', { root: this.root.fsPath, pictures }, { signal });
      // buffers of their own: what a message shares with others would be sent whole
      const own = contacts.map(contact => {
        const { small } = contact;
        return small ? { ...contact, small: { ...small, bytes: new Uint8Array(small.bytes) } } : contact;
      });
      this.#post({ type: 'contacts', contacts: own });
    });
  }

  async export() {
    const words = await exportPage(this.root, this.checker);
    if (words) this.#post({ type: 'told', words });
  }

  async #answering(work: () => Promise<void>) {
    try {
      await work();
    } catch (error) {
      if (!(error instanceof Cancelled)) this.#post({ type: 'told', words: (error as Error).message });
    }
  }

  #post(message: ToBookPage) {
    void this.panel.webview.postMessage(message);
  }
}
