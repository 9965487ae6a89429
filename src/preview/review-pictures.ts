// no-unit-test: it lives in a webview; test/e2e/suites/review tests it there
import { sameShape } from '../report/page/same-shape';
import type { ReviewedPicture, ToReviewPage } from '../shared/review';
import { Comparison, type View } from './comparison';
import { changed } from './sides';

type Shown = Extract<ToReviewPage, { type: 'raster' }>;
type Side = 'before' | 'after';

/** The pictures of one comparison: those that can be laid over each other are, others stand side by side. */
export class ReviewPictures {
  #comparison: Comparison | undefined;
  #page: HTMLElement | undefined;
  #wanted: Side[] = [];
  #come = new Map<Side, Shown | string>();
  #urls: string[] = [];
  #view: View = { view: 'wipe', zoom: 1, wipe: 50 };

  constructor(private readonly onWipe: (percent: number) => void) {}

  /** The page was drawn anew, with empty places. */
  begin(page: HTMLElement, { before, after }: ReviewedPicture, view: View) {
    for (const url of this.#urls.splice(0)) URL.revokeObjectURL(url);
    this.#page = page;
    this.#comparison = undefined;
    this.#come.clear();
    this.#wanted = [...(before ? (['before'] as const) : []), ...(after ? (['after'] as const) : [])];
    this.#view = view;
  }

  async show(shown: Shown) {
    const { of } = shown;
    if (of === 'before' || of === 'after') return this.#receive(of, shown);
    this.#small(of)?.replaceChildren(this.#image(shown, ''));
  }

  say(of: string, message: string) {
    if (of === 'before' || of === 'after') this.#receive(of, message);
    else this.#small(of)?.replaceChildren(message);
  }

  set(view: View) {
    this.#view = view;
    this.#comparison?.set({ ...view });
  }

  #small(path: string): HTMLElement | null {
    return this.#page?.querySelector<HTMLElement>(`[data-neighbour="${CSS.escape(path)}"]`) ?? null;
  }

  #receive(side: Side, what: Shown | string) {
    this.#come.set(side, what);
    if (this.#wanted.every(each => this.#come.has(each))) this.#place();
  }

  /** All that was wanted is here, or known not to come. */
  #place() {
    const place = this.#page?.querySelector('#panes');
    if (!place) return;
    const [before, after] = [this.#come.get('before'), this.#come.get('after')];
    if (isShown(before) && isShown(after) && sameShape(before, after)) {
      const comparison = new Comparison(this.onWipe, changed());
      this.#comparison = comparison;
      // its own measure of width is for what stands beside it
      place.replaceWith(comparison.element);
      comparison.set({ ...this.#view });
      void comparison.showBefore(before.png as Uint8Array<ArrayBuffer>);
      void comparison.showAfter(after.png as Uint8Array<ArrayBuffer>);
      return;
    }
    this.#page?.querySelector('#bar')?.setAttribute('hidden', '');
    const row = document.createElement('div');
    row.className = 'apart';
    for (const side of this.#wanted) {
      const what = this.#come.get(side)!;
      const figure = document.createElement('div');
      figure.append(isShown(what) ? this.#image(what, changed()[side]) : what);
      row.append(figure);
    }
    place.replaceChildren(row);
  }

  #image({ png }: Shown, alt: string): HTMLImageElement {
    const url = URL.createObjectURL(new Blob([png as Uint8Array<ArrayBuffer>], { type: 'image/png' }));
    this.#urls.push(url);
    const image = new Image();
    image.src = url;
    image.alt = alt;
    return image;
  }
}

const isShown = (what: Shown | string | undefined): what is Shown => typeof what === 'object';
