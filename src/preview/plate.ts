// no-unit-test: it lives in a webview; test/e2e/suites/book/preview.test.ts tests it there
import type { ToPage } from '../shared/preview-protocol';

/** The place where the picture is seen: on a neutral ground whatever the theme, since surroundings tint a grey. */
export class Plate {
  readonly element = document.createElement('figure');
  #url = '';

  constructor() {
    this.element.className = 'picture';
    this.say('The picture is being read.');
  }

  show({ png, fullWidth, fullHeight }: Extract<ToPage, { type: 'raster' }>) {
    URL.revokeObjectURL(this.#url);
    this.#url = URL.createObjectURL(new Blob([png], { type: 'image/png' }));
    const image = new Image();
    image.src = this.#url;
    image.alt = `The picture, ${fullWidth} × ${fullHeight} pixels, made small`;
    this.element.replaceChildren(image);
  }

  say(text: string) {
    const words = document.createElement('p');
    words.textContent = text;
    this.element.replaceChildren(words);
  }
}
