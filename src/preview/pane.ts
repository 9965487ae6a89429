// no-unit-test: it lives in a webview; test/e2e/suites/convert/preview.test.ts tests it there

/** One picture behind a window that can be scrolled. */
export class Pane {
  readonly element = document.createElement('div');
  readonly #image = new Image();
  #url = '';

  constructor(side: 'before' | 'after', label: string) {
    this.element.className = `pane ${side}`;
    this.element.tabIndex = 0;
    this.element.setAttribute('role', 'region');
    this.element.setAttribute('aria-label', label);
    this.#image.alt = label;
    this.#image.draggable = false;
    this.element.append(this.#image);
  }

  async show(png: Uint8Array<ArrayBuffer>) {
    const before = this.#url;
    this.#url = URL.createObjectURL(new Blob([png], { type: 'image/png' }));
    this.#image.src = this.#url;
    await this.#image.decode().catch(() => {});
    URL.revokeObjectURL(before);
  }

  /** Pixels of the shown picture. */
  get natural(): { width: number; height: number } {
    return { width: this.#image.naturalWidth, height: this.#image.naturalHeight };
  }

  /** Sizes in CSS pixels: of the picture, and of the window on it. */
  size(width: number, height: number, windowHeight: number) {
    this.#image.style.width = `${width}px`;
    this.#image.style.height = `${height}px`;
    this.element.style.height = `${windowHeight}px`;
  }
}
