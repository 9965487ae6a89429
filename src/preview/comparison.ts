// no-unit-test: it lives in a webview; test/e2e/suites/convert/preview.test.ts tests it there
import { Pane } from './pane';
import type { Sides } from './sides';
import { Wipe } from './wipe';

export interface View {
  view: 'wipe' | 'sides';
  /** How many times larger than what fits. */
  zoom: number;
  /** Where the bar stands, percent. */
  wipe: number;
}

/** CSS pixels: the height of the window on a picture, and the space between two. */
const HIGHEST = 620;
const GAP = 12;

/** A picture as it is and as it would be: one over the other with a bar between them, or side by side; always at one zoom and one place. */
export class Comparison {
  readonly element = document.createElement('div');
  readonly #panes = document.createElement('div');
  readonly #before: Pane;
  readonly #after: Pane;
  readonly #wipe: Wipe;
  #view: View = { view: 'wipe', zoom: 1, wipe: 50 };

  constructor(onWipe: (percent: number) => void, sides: Sides) {
    const panes = this.#panes;
    this.#before = new Pane('before', sides.before);
    this.#after = new Pane('after', sides.after);
    this.element.className = 'stage';
    this.element.append(panes);
    panes.className = 'panes';
    this.#wipe = new Wipe(
      panes,
      percent => {
        this.#view.wipe = percent;
        this.#clip();
        onWipe(percent);
      },
      sides,
    );
    panes.append(this.#before.element, this.#after.element, this.#wipe.element);
    this.#together();
    this.#byPointer();
    new ResizeObserver(() => this.#fit()).observe(this.element);
  }

  async showBefore(png: Uint8Array<ArrayBuffer>) {
    await this.#before.show(png);
    this.#fit();
  }

  async showAfter(png: Uint8Array<ArrayBuffer>) {
    await this.#after.show(png);
    this.#fit();
  }

  set(view: View) {
    this.#view = { ...view };
    this.#panes.dataset.view = view.view;
    this.#wipe.element.hidden = view.view !== 'wipe';
    this.#wipe.move(view.wipe);
    this.#fit();
  }

  /** Seen of the upper picture is what lies right of the bar. */
  #clip() {
    const { view, wipe } = this.#view;
    this.#after.element.style.clipPath = view === 'wipe' ? `inset(0 0 0 ${wipe}%)` : '';
  }

  #fit() {
    const { width, height } = this.#before.natural;
    const { view, zoom } = this.#view;
    const all = this.element.clientWidth;
    const room = view === 'wipe' ? all : (all - GAP) / 2;
    if (!width || room <= 0) return;
    const fit = Math.min(room / width, HIGHEST / height, 1);
    const whole = (length: number) => Math.floor(length * fit);
    for (const pane of [this.#before, this.#after])
      pane.size(whole(width) * zoom, whole(height) * zoom, whole(height));
    // the bar goes over the picture, not over the ground beside it
    const shown = view === 'wipe' ? whole(width) : 2 * whole(width) + GAP;
    this.element.parentElement?.style.setProperty('--shown', `${shown}px`);
    this.#clip();
  }

  /** Where one is scrolled to the other is too; the other's own event then leads nowhere. */
  #together() {
    const [one, other] = [this.#before.element, this.#after.element];
    const following = new Set<HTMLElement>();
    const follow = (from: HTMLElement, to: HTMLElement) =>
      from.addEventListener('scroll', () => {
        const { scrollLeft, scrollTop } = from;
        if (following.delete(from) || (to.scrollLeft === scrollLeft && to.scrollTop === scrollTop)) return;
        following.add(to);
        to.scrollTo(scrollLeft, scrollTop);
      });
    follow(one, other);
    follow(other, one);
  }

  /** A large picture is dragged about; over one that fits, the bar comes to the pointer. */
  #byPointer() {
    const panes = this.#panes;
    const { element } = this.#before;
    let origin = { x: 0, y: 0 };
    panes.addEventListener('pointerdown', event => {
      if (event.button !== 0 || event.target === this.#wipe.element) return;
      if (this.#view.zoom > 1) {
        panes.setPointerCapture(event.pointerId);
        origin = { x: element.scrollLeft + event.clientX, y: element.scrollTop + event.clientY };
      } else if (this.#view.view === 'wipe') this.#wipe.toPointer(event);
    });
    panes.addEventListener('pointermove', ({ pointerId, clientX, clientY }) => {
      if (panes.hasPointerCapture(pointerId)) element.scrollTo(origin.x - clientX, origin.y - clientY);
    });
  }
}
