// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import path from 'node:path';
import { factsVersion } from '../../book/cache/version';
import { firstChoices } from '../../book/first-settings/choices';
import { bookFoldersIn } from '../../book/first-settings/folders';
import { createLooker, type Looker } from '../../book/looker';
import type { Pool } from '../../book/pool';
import { listingMeant } from '../../book/settings/list-meant';
import { sheetOf } from '../../report/sheet';
import { explain, rules } from '../../rules';
import type { CheckerAnswers, CheckerRequest, Progress, SheetWish } from '../../shared/checker-protocol';
import type { Facing } from '../../shared/facing';
import type { Finding, PictureReport } from '../../shared/finding';
import type { BookPlace, Sheet } from '../../shared/sheet';
import type { LightId } from '../../shared/target';
import { convert, undo } from './convert';
import { convertible } from './convertible';
import { facingOf } from './facing';
import { glanceAt } from './glance';
import { forecastsOn, lonePicture } from './lone-picture';
import { OpenBook } from './open-book';
import { contactsOf, writePage } from './overview';
import { BookRemedies } from './remedies';
import { BookReviews } from './review';
import { SmallPictures } from './small-pictures';
import { makeDemo, writeFirst } from './start';
import { remember, renaming, unmakeAll, unplace } from './taken-back';

type Answer = CheckerAnswers[keyof CheckerAnswers]['answer'];

/** Answers the editor's questions. Keeps the books that were asked for. */
export class Checker {
  readonly #books = new Map<string, OpenBook>();
  readonly #version: Promise<string>;
  readonly #remedies: BookRemedies;
  readonly #small: SmallPictures;
  readonly #demoFile: string;
  readonly #reviews: BookReviews;
  readonly #looker: Looker;

  constructor(
    private readonly pool: Pool,
    readerFile: string,
  ) {
    this.#version = factsVersion(readerFile);
    this.#small = new SmallPictures(pool);
    this.#demoFile = path.join(path.dirname(readerFile), 'demo.js');
    this.#reviews = new BookReviews(pool);
    this.#looker = createLooker(readerFile);
    this.#remedies = new BookRemedies(path.join(path.dirname(readerFile), 'converter.js'));
  }

  async close(): Promise<void> {
    await Promise.all([this.#remedies.close(), this.#looker.close()]);
  }

  /** Rejects with the signal's reason when cancelled, and with an error whose message is for the user. */
  async answer(
    request: Exclude<CheckerRequest, { question: 'cancel' }>,
    signal: AbortSignal,
    onProgress: (progress: Progress) => void,
  ): Promise<Answer> {
    switch (request.question) {
      case 'check':
        // also where all is known: the next picture that is saved does not wait for its reader's start
        this.pool.warm(1);
        return this.#book(request.root).check(request.open, signal, onProgress);
      case 'places':
        return this.#book(request.root).places(request, signal);
      case 'glance': {
        const file = path.join(request.root, request.picture);
        const book = this.#book(request.root);
        return glanceAt(file, book.pages(request.picture)[0], book.findings, this.pool, signal);
      }
      case 'sheet':
        return this.#sheet(request, signal);
      case 'raster':
        return this.pool.raster({ file: request.file }, request.page, request.longEdge, signal);
      case 'facing':
        return this.#facing(request, signal);
      case 'detail':
        return this.#looker.detail(request, signal);
      case 'pixel':
        return this.#looker.pixel(request, signal);
      case 'marks':
        return this.#looker.marks(request, signal);
      case 'remedies':
        return this.#remedies.choices(this.#recommendedFor(request));
      case 'candidate':
        return this.#remedies.beforeAndAfter(request, await this.#find(request, signal), signal);
      case 'methods':
        return this.#remedies.methods(request, signal);
      case 'convertible': {
        const { root, paths } = request;
        return convertible(paths, file => (root ? this.#book(root).pages(withinBook(root, file)) : []));
      }
      case 'convert':
        return convert(request, this.pool, root => this.#book(root).cache(), { signal, onProgress });
      case 'undo':
        return undo({ ...request, signal, onProgress });
      case 'relinked':
        return remember(request);
      case 'renaming':
        return renaming(request, root => this.#book(root).report(signal), signal);
      case 'unplace':
        return unplace(request);
      case 'unmake':
        return unmakeAll(request);
      case 'overview':
        return this.#book(request.root).overview(signal);
      case 'contacts': {
        const report = await this.#book(request.root).report(signal);
        return report ? contactsOf(request, report, this.#small, signal) : [];
      }
      case 'bookPage': {
        const report = await this.#book(request.root).report(signal);
        if (!report) throw new Error('The settings cannot be used, so there is nothing to write.');
        return writePage(request, report, this.pool, { signal, onProgress });
      }
      case 'review': {
        const cache = await this.#book(request.root).cache();
        return this.#reviews.review(request, cache, { signal, onProgress });
      }
      case 'before':
        return this.#reviews.before(request, signal);
      case 'firstChoices':
        return firstChoices();
      case 'bookFolders':
        return bookFoldersIn(request.root, signal);
      case 'writeFirst':
        return writeFirst(request, await this.#book(request.root).cache(), signal);
      case 'demo':
        return makeDemo(request.folder, this.#demoFile, signal);
      case 'waive':
        return this.#book(request.root).waive(request, signal);
      case 'listMeant':
        return listingMeant(request.text, request.picture, request.meant);
      case 'rules':
        return rules.map(({ id, description }) => ({ id, description }));
      case 'page':
        return pageOf(request.rule);
    }
  }

  #book(root: string): OpenBook {
    let book = this.#books.get(root);
    if (!book) this.#books.set(root, (book = new OpenBook(root, this.pool, this.#version)));
    return book;
  }

  async #sheet(wish: SheetWish, signal: AbortSignal): Promise<Sheet> {
    const { light, series } = wish;
    const { picture, pages, shared, place } = await this.#find(wish, signal);
    return sheetOf(picture, shared, { light, series, pages, place });
  }

  async #facing(wish: SheetWish, signal: AbortSignal): Promise<Facing> {
    const { picture } = await this.#find(wish, signal);
    const spread = wish.root === null ? [] : this.#book(wish.root).spreadOf(picture.path);
    if (wish.root === null || spread.length < 2) return { conditions: [], pictures: [] };
    const lit = spread.map(each => under(each, wish.light));
    return facingOf(wish.root, picture, lit, this.pool, signal);
  }

  /** The picture under the light that is wished. */
  async #find(wish: SheetWish, signal: AbortSignal): Promise<Found> {
    const found = this.#inBook(wish) ?? (await this.#alone(wish, signal));
    return { ...found, picture: under(found.picture, wish.light) };
  }

  #recommendedFor({ root, file }: { root: string | null; file: string }) {
    return root === null ? null : this.#book(root).recommendedFor(withinBook(root, file));
  }

  #inBook({ root, file, page }: SheetWish): Found | undefined {
    if (root === null) return;
    const book = this.#book(root);
    const pages = book.pages(withinBook(root, file));
    const picture = pages.find(({ facts }) => facts.page === page) ?? pages[0];
    return (
      picture && {
        ...{ picture, pages: pages.length, shared: book.findings },
        place: book.placeOf(picture.path),
      }
    );
  }

  async #alone({ file, page }: SheetWish, signal: AbortSignal): Promise<Found> {
    const pages = await this.pool.facts(file, signal);
    const facts = pages.find(facts => facts.page === page) ?? pages[0];
    return { picture: lonePicture(file, facts), pages: pages.length, shared: [], place: null };
  }
}

const withinBook = (root: string, file: string) => path.relative(root, file).split(path.sep).join('/');

/** A page of a picture; the first where a file that changed on disk has lost the page. */
interface Found {
  picture: PictureReport;
  /** How many the file has. */
  pages: number;
  shared: readonly Finding[];
  place: BookPlace | null;
}

/** The same picture with its forecasts under another light; what was found stays, it is about the book's own. */
function under(picture: PictureReport, light: LightId | null): PictureReport {
  if (!light) return picture;
  const targets = picture.targets.map(target => ({ ...target, light }));
  return { ...picture, ...forecastsOn(targets, picture.facts) };
}

function pageOf(rule: string): string {
  const page = explain(rule);
  if (page === null) throw new Error(`There is no rule "${rule}".`);
  return page;
}
