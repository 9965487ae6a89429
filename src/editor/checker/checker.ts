// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import path from 'node:path';
import { factsVersion } from '../../book/cache/version';
import type { Pool } from '../../book/pool';
import { sheetOf } from '../../report/sheet';
import { explain, rules } from '../../rules';
import type { CheckerAnswers, CheckerRequest, Progress, SheetWish } from '../../shared/checker-protocol';
import type { Finding, PictureReport } from '../../shared/finding';
import type { Sheet } from '../../shared/sheet';
import type { LightId } from '../../shared/target';
import { forecastsOn, lonePicture } from './lone-picture';
import { OpenBook } from './open-book';

type Answer = CheckerAnswers[keyof CheckerAnswers]['answer'];

/** Answers the editor's questions. Keeps the books that were asked for. */
export class Checker {
  readonly #books = new Map<string, OpenBook>();
  readonly #version: Promise<string>;

  constructor(
    private readonly pool: Pool,
    readerFile: string,
  ) {
    this.#version = factsVersion(readerFile);
  }

  /** Rejects with the signal's reason when cancelled, and with an error whose message is for the user. */
  async answer(
    request: Exclude<CheckerRequest, { question: 'cancel' }>,
    signal: AbortSignal,
    onProgress: (progress: Progress) => void,
  ): Promise<Answer> {
    switch (request.question) {
      case 'check':
        return this.#book(request.root).check(signal, onProgress);
      case 'sheet':
        return this.#sheet(request, signal);
      case 'raster':
        return this.pool.raster(request.file, request.page, request.longEdge, signal);
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
    const { picture, pages, shared } = this.#inBook(wish) ?? (await this.#alone(wish, signal));
    return sheetOf(under(picture, light), shared, { light, series, pages });
  }

  #inBook({ root, file, page }: SheetWish): Found | undefined {
    if (root === null) return;
    const book = this.#book(root);
    const pages = book.pages(path.relative(root, file).split(path.sep).join('/'));
    const picture = pages.find(({ facts }) => facts.page === page) ?? pages[0];
    return picture && { picture, pages: pages.length, shared: book.findings };
  }

  async #alone({ file, page }: SheetWish, signal: AbortSignal): Promise<Found> {
    const pages = await this.pool.facts(file, signal);
    const facts = pages.find(facts => facts.page === page) ?? pages[0];
    return { picture: lonePicture(file, facts), pages: pages.length, shared: [] };
  }
}

/** A page of a picture; the first where a file that changed on disk has lost the page. */
interface Found {
  picture: PictureReport;
  /** How many the file has. */
  pages: number;
  shared: readonly Finding[];
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
