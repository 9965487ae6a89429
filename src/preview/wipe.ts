// no-unit-test: it lives in a webview; test/e2e/suites/convert/preview.test.ts tests it there

import type { Sides } from './sides';

const STEP = 2;
const LARGE_STEP = 10;

/** A bar between what lies left and right of it, to be moved by pointer and keys. */
export class Wipe {
  readonly element = document.createElement('div');
  #at = 50;

  /** `onMove`: told where the bar is, in percent from the left. */
  constructor(
    private readonly stage: HTMLElement,
    private readonly onMove: (percent: number) => void,
    private readonly words: Pick<Sides, 'bar' | 'at'>,
  ) {
    const { element } = this;
    element.className = 'wipe';
    element.tabIndex = 0;
    element.id = 'wipe';
    element.setAttribute('role', 'slider');
    element.setAttribute('aria-label', words.bar);
    element.setAttribute('aria-orientation', 'horizontal');
    element.setAttribute('aria-valuemin', '0');
    element.setAttribute('aria-valuemax', '100');
    element.addEventListener('keydown', event => this.#key(event));
    element.addEventListener('pointerdown', event => {
      element.setPointerCapture(event.pointerId);
      event.preventDefault();
      element.focus();
    });
    element.addEventListener('pointermove', event => {
      if (element.hasPointerCapture(event.pointerId)) this.toPointer(event);
    });
  }

  get at(): number {
    return this.#at;
  }

  move(percent: number) {
    this.#at = Math.min(100, Math.max(0, Math.round(percent)));
    this.element.style.left = `${this.#at}%`;
    this.element.setAttribute('aria-valuenow', String(this.#at));
    this.element.setAttribute('aria-valuetext', this.words.at(this.#at));
    this.onMove(this.#at);
  }

  toPointer({ clientX }: MouseEvent) {
    const { left, width } = this.stage.getBoundingClientRect();
    this.move(((clientX - left) / width) * 100);
  }

  #key(event: KeyboardEvent) {
    const step = event.shiftKey ? LARGE_STEP : STEP;
    const to: Record<string, number> = {
      ArrowLeft: this.#at - step,
      ArrowDown: this.#at - step,
      ArrowRight: this.#at + step,
      ArrowUp: this.#at + step,
      PageDown: this.#at - LARGE_STEP,
      PageUp: this.#at + LARGE_STEP,
      Home: 0,
      End: 100,
    };
    if (!(event.key in to)) return;
    event.preventDefault();
    this.move(to[event.key]);
  }
}
