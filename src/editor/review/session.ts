// no-unit-test: it lives in VS Code; test/e2e/suites/review tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import type { Raster } from '../../shared/reader-protocol';
import type { FromReviewPage, ReviewedPicture, ReviewWish, ToReviewPage } from '../../shared/review';
import type { Book } from '../book';
import type { Books } from '../books';
import { Cancelled, type CheckerClient } from '../checker-client';
import { type Page, showPage } from '../page-shell';

const PAGE: Page = {
  program: 'dist/review.js',
  styles: ['media/preview.css', 'media/sheet.css', 'media/remedy.css', 'media/review.css'],
  className: 'review',
};

/** Longest edges in pixels: of what changed, and of its neighbours. */
const LARGE = 1600;
const SMALL = 240;

/** One panel with what changed in a book: filled when its page is ready, and again after every check. */
export class ReviewSession {
  readonly #disposables: vscode.Disposable[] = [];
  #ready = false;
  #running = new AbortController();
  #busy = false;
  /** The book was checked while it was compared. */
  #stale = false;

  constructor(
    private readonly panel: vscode.WebviewPanel,
    private readonly root: vscode.Uri,
    private wish: ReviewWish,
    books: Books,
    private readonly checker: CheckerClient,
    extension: vscode.Uri,
  ) {
    const { webview } = panel;
    const isOurs = ({ root, state }: Book) =>
      state.kind === 'checked' && root.toString() === this.root.toString();
    this.#disposables.push(
      webview.onDidReceiveMessage((message: FromReviewPage) => this.#receive(message)),
      panel.onDidDispose(() => this.#dispose()),
      books.onDidChange(book => isOurs(book) && this.#refresh()),
    );
    panel.title =
      wish.since === 'branch'
        ? vscode.l10n.t('Changed on This Branch')
        : vscode.l10n.t('Changed Since the Last Commit');
    showPage(webview, extension, PAGE);
  }

  /** Brings it to the front with what is wished. */
  show(wish: ReviewWish) {
    this.wish = wish;
    this.panel.reveal();
    void this.#fill(true);
  }

  #dispose() {
    this.#running.abort();
    vscode.Disposable.from(...this.#disposables).dispose();
  }

  #receive(message: FromReviewPage) {
    switch (message.type) {
      case 'ready':
        this.#ready = true;
        return void this.#fill(true);
      case 'again':
        return void this.#fill(true);
      case 'choose':
        this.wish = { ...this.wish, picture: message.picture };
        return void this.#fill(false);
      case 'open':
        return void vscode.commands.executeCommand('evengrey.openPreview', this.#uri(message.path));
      case 'explain':
        return void vscode.commands.executeCommand('evengrey.explainRule', message.rule);
    }
  }

  #uri(name: string): vscode.Uri {
    return vscode.Uri.joinPath(this.root, name);
  }

  /** One comparison at a time: checks may come faster than comparisons are made, and each would put off the last. */
  #refresh() {
    if (this.#busy) this.#stale = true;
    else void this.#fill(true);
  }

  /** `fresh`: the folder may have changed. */
  async #fill(fresh: boolean) {
    // before its `ready` the page hears nothing
    if (!this.#ready) return;
    this.#running.abort();
    const { signal } = (this.#running = new AbortController());
    const { wish } = this;
    this.#busy = true;
    if (fresh) this.#stale = false;
    const branch = vscode.workspace
      .getConfiguration('evengrey', this.root)
      .get<string>('compareWith')
      ?.trim();
    this.#post({ type: 'busy', words: vscode.l10n.t('What changed is being compared.') });
    try {
      const { review, picture } = await this.checker.ask(
        'review',
        { root: this.root.fsPath, branch: branch || null, fresh, ...wish },
        {
          signal,
          onProgress: ({ done, total }) =>
            this.#post({ type: 'busy', words: vscode.l10n.t('{0} of {1} pictures are read.', done, total) }),
        },
      );
      this.#post({ type: 'review', root: this.root.toString(), wish, review, picture });
      if (picture) await this.#fillPictures(picture, review.commit, signal);
    } catch (error) {
      if (!(error instanceof Cancelled)) this.#post({ type: 'empty', words: (error as Error).message });
    }
    // what is newer has the word
    if (this.#running.signal !== signal) return;
    this.#busy = false;
    if (this.#stale && !signal.aborted) void this.#fill(true);
  }

  async #fillPictures(picture: ReviewedPicture, commit: string, signal: AbortSignal) {
    const { before, after, page, neighbours } = picture;
    const root = this.root.fsPath;
    const fromFolder = (name: string, longEdge: number, of = 1) =>
      this.checker.ask('raster', { file: path.join(root, name), page: of, longEdge }, { signal });
    const ask = { root, commit, page, longEdge: LARGE };
    await Promise.all([
      before && this.#draw('before', this.checker.ask('before', { ...ask, path: before.path }, { signal })),
      after && this.#draw('after', fromFolder(after.path, LARGE, page)),
      ...neighbours.map(({ path: name }) => this.#draw(name, fromFolder(name, SMALL))),
    ]);
  }

  async #draw(of: string, asked: Promise<Raster>) {
    try {
      const { png, fullWidth, fullHeight } = await asked;
      // a buffer of its own: what a message shares with others would be sent whole
      this.#post({ type: 'raster', of, png: new Uint8Array(png), fullWidth, fullHeight });
    } catch (error) {
      if (!(error instanceof Cancelled))
        this.#post({ type: 'no-raster', of, message: (error as Error).message });
    }
  }

  #post(message: ToReviewPage) {
    void this.panel.webview.postMessage(message);
  }
}
