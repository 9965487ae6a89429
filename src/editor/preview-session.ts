// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { ConvertAnswer } from '../shared/checker-protocol';
import type { FromPage, PreviewWish, ToPage } from '../shared/preview-protocol';
import type { SmallPicture } from '../shared/reader-protocol';
import type { Made } from '../shared/remedies';
import type { Books } from './books';
import { Cancelled, type CheckerClient } from './checker-client';
import { convertWords } from './convert/words';
import { CONVERT_AND_PLACE } from './layout/commands';
import { type Page, showPage } from './page-shell';
import { Looking } from './preview-look';
import { onScreenMeasured, rememberScreen, screenPpi } from './screen';

const PAGE: Page = {
  program: 'dist/preview.js',
  styles: ['media/preview.css', 'media/sheet.css', 'media/remedy.css'],
  className: 'sheet',
};

/** The picture is shown no larger than this. */
const LONG_EDGE = 1600;
/** And among others so. */
const SMALL_EDGE = 400;

/** One preview: fills its page when the page is ready, and again whenever the picture or its book changes. */
export class PreviewSession {
  readonly #disposables: vscode.Disposable[] = [];
  #wish: PreviewWish | undefined;
  #running: AbortController | undefined;
  #candidate: AbortController | undefined;
  readonly #looking: Looking;
  #disposed = false;

  constructor(
    private readonly panel: vscode.WebviewPanel,
    /** The picture as a file of this machine. */
    private readonly file: string,
    private readonly uri: vscode.Uri,
    private readonly books: Books,
    private readonly checker: CheckerClient,
    extension: vscode.Uri,
  ) {
    const { webview } = panel;
    this.#looking = new Looking(checker, file, message => this.#post(message));
    this.#disposables.push(
      webview.onDidReceiveMessage((message: FromPage) => this.#receive(message)),
      panel.onDidDispose(() => this.dispose()),
      onScreenMeasured(() => this.#post({ type: 'screen', ppi: screenPpi() })),
      books.onDidChange(book => book.state.kind === 'checked' && book.contains(uri) && this.refresh()),
    );
    showPage(webview, extension, PAGE);
  }

  /** Asks for the sheet and the picture anew; an answer still on its way is dropped. */
  async refresh() {
    // before its `ready` the page hears nothing
    if (!this.#wish || this.#disposed) return;
    this.#running?.abort();
    const { signal } = (this.#running = new AbortController());
    await Promise.all([this.#fillSheet(this.#wish, signal), this.#fillRaster(this.#wish, signal)]);
  }

  dispose() {
    this.#disposed = true;
    this.#running?.abort();
    this.#candidate?.abort();
    this.#looking.dispose();
    vscode.Disposable.from(...this.#disposables).dispose();
  }

  #receive(message: FromPage) {
    switch (message.type) {
      case 'ready':
        this.#wish = message;
        this.#post({ type: 'screen', ppi: screenPpi() });
        return void this.refresh();
      case 'wish':
        if (message.page !== this.#wish?.page) {
          this.#wish = message;
          return void this.refresh();
        }
        this.#wish = message;
        this.#running ??= new AbortController();
        return void this.#fillSheet(message, this.#running.signal);
      case 'explain':
        return void vscode.commands.executeCommand('evengrey.explainRule', message.rule);
      case 'detail':
      case 'pixel':
      case 'marks':
        return void (this.#wish && this.#looking.at(this.#wish.page, message));
      case 'facing':
        return void this.#fillFacing();
      case 'screen':
        return void rememberScreen(message.ppi);
      case 'open':
        return void this.#open(message.path);
      case 'candidate':
        return void this.#fillCandidate(message);
      case 'methods':
        return void this.#fillMethods();
      case 'convert':
        return void this.#convert(message);
      case 'place':
        return void this.#place();
    }
  }

  async #fillSheet(wish: PreviewWish, signal: AbortSignal) {
    const { file, root } = this;
    const { page, light, series } = wish;
    try {
      const [sheet, remedies] = await Promise.all([
        this.checker.ask('sheet', { file, page, root, light, series }, { signal }),
        this.checker.ask('remedies', { file, root }, { signal }),
      ]);
      // the light may have been changed again in the meantime
      if (this.#wish !== wish) return;
      this.#post({ type: 'sheet', sheet });
      this.#post({ type: 'remedies', remedies, writable: this.uri.scheme === 'file' });
    } catch (error) {
      if (!(error instanceof Cancelled)) this.#post({ type: 'trouble', message: (error as Error).message });
    }
  }

  async #fillRaster({ page }: PreviewWish, signal: AbortSignal) {
    try {
      const raster = await this.checker.ask(
        'raster',
        { file: this.file, page, longEdge: LONG_EDGE },
        { signal },
      );
      const { orientation, fullWidth, fullHeight } = raster;
      const png = new Uint8Array(raster.png);
      this.#post({ type: 'raster', png, orientation, fullWidth, fullHeight });
    } catch (error) {
      if (!(error instanceof Cancelled)) this.#post({ type: 'no-raster', message: (error as Error).message });
    }
  }

  /** What would come of a conversion; an answer to an earlier question is dropped. */
  async #fillCandidate({ to, method }: Made) {
    if (!this.#wish) return;
    this.#candidate?.abort();
    const { signal } = (this.#candidate = new AbortController());
    const { file, root } = this;
    const { page, light, series } = this.#wish;
    try {
      const question = { file, root, page, light, series, to, method, longEdge: LONG_EDGE };
      const candidate = await this.checker.ask('candidate', question, { signal });
      const png = new Uint8Array(candidate.raster.png);
      this.#post({ type: 'candidate', candidate: { ...candidate, raster: { ...candidate.raster, png } } });
    } catch (error) {
      if (!(error instanceof Cancelled))
        this.#post({ type: 'no-candidate', message: (error as Error).message });
    }
  }

  /** What stands on the same spread; without an answer the page says nothing of it. */
  async #fillFacing() {
    const { file, root } = this;
    if (!this.#wish) return;
    try {
      const question = { file, root, ...this.#wish };
      const { conditions, pictures } = await this.checker.ask('facing', question, {
        signal: this.#running?.signal,
      });
      const own = (small: SmallPicture) => ({ ...small, bytes: new Uint8Array(small.bytes) });
      const facing = {
        conditions,
        pictures: pictures.map(each => ({ ...each, small: each.small && own(each.small) })),
      };
      this.#post({ type: 'facing', facing });
    } catch (error) {
      if (!(error instanceof Cancelled))
        this.#post({ type: 'facing', facing: { conditions: [], pictures: [] } });
    }
  }

  async #fillMethods() {
    const signal = this.#running?.signal;
    try {
      const { file } = this;
      const pictures = await this.checker.ask('methods', { file, longEdge: SMALL_EDGE }, { signal });
      const own = (png: Uint8Array) => new Uint8Array(png);
      const grey = pictures.grey.map(({ id, png }) => ({ id, png: own(png) }));
      this.#post({ type: 'methods', pictures: { ...pictures, asItIs: own(pictures.asItIs), grey } });
    } catch (error) {
      if (!(error instanceof Cancelled))
        this.#post({ type: 'no-methods', message: (error as Error).message });
    }
  }

  async #convert(made: Made) {
    const answer = await vscode.commands.executeCommand<ConvertAnswer | undefined>(
      'evengrey.convert',
      this.uri,
      undefined,
      made,
    );
    if (answer) this.#post({ type: 'converted', words: convertWords(answer) });
  }

  /** As the quick fix on a line that places it. */
  async #place() {
    const book = this.books.of(this.uri);
    const name = book && this.uri.path.slice(book.root.path.length + 1);
    const placed = book?.answer?.layouts.flatMap(({ places }) => places.filter(p => p.picture === name));
    const fix = placed
      ?.flatMap(({ findings }) => findings)
      .find(({ rule, fix }) => fix && rule === 'format-not-placed')?.fix;
    await vscode.commands.executeCommand(
      fix ? CONVERT_AND_PLACE : 'evengrey.convert',
      ...(fix ? [[this.uri], fix] : [this.uri]),
    );
  }

  /** Another picture of the book, by its path relative to the root. */
  async #open(path: string) {
    const book = this.books.of(this.uri);
    if (!book) return;
    await vscode.commands.executeCommand('evengrey.openPreview', vscode.Uri.joinPath(book.root, path));
  }

  /** Of the book that the picture is in. */
  private get root(): string | null {
    return this.books.of(this.uri)?.root.fsPath ?? null;
  }

  #post(message: ToPage) {
    if (!this.#disposed) void this.panel.webview.postMessage(message);
  }
}
