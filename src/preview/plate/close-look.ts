// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import type { PixelReading } from '../../shared/look';
import type { FromPage } from '../../shared/preview-protocol';
import { readingWords } from './reading';
import type { Point, Size } from './view';

/** While a view still moves nothing is asked for, ms. */
const REST = 120;
/** Beyond what is seen, so that a small move shows no blur: share of its edges. */
const BEYOND = 0.1;
/** More is not worth sending to a screen. */
const LONGEST_EDGE = 2048;

/** Asks for what a close look needs, never for more than one thing of a kind at a time. */
export class CloseLook {
  #resting: number | undefined;
  #wanted: Point | null = null;
  #asked = false;

  constructor(
    private readonly post: (message: FromPage) => void,
    private readonly told: (words: string) => void,
  ) {}

  /** A part of the picture, once the view is at rest; `perPixel`: device pixels on a pixel of the picture. */
  part({ x, y, width, height }: Point & Size, perPixel: number) {
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => {
      const box = {
        x: Math.floor(x - BEYOND * width),
        y: Math.floor(y - BEYOND * height),
        width: Math.ceil((1 + 2 * BEYOND) * width),
        height: Math.ceil((1 + 2 * BEYOND) * height),
      };
      const longEdge = Math.ceil(Math.max(box.width, box.height) * Math.min(1, perPixel));
      this.post({ type: 'detail', box, longEdge: Math.min(LONGEST_EDGE, longEdge) });
    }, REST);
  }

  noPart() {
    clearTimeout(this.#resting);
  }

  /** The pixel at a place of the picture; null: none any more. */
  read(place: Point | null) {
    this.#wanted = place;
    if (!place) this.told('');
    this.#ask();
  }

  tell(pixel: PixelReading) {
    this.#asked = false;
    if (this.#wanted && this.#wanted.x === pixel.x && this.#wanted.y === pixel.y) {
      this.#wanted = null;
      this.told(readingWords(pixel));
    }
    this.#ask();
  }

  /** A question got no answer. */
  forget() {
    this.#asked = false;
    this.#wanted = null;
  }

  #ask() {
    if (!this.#wanted || this.#asked) return;
    this.#asked = true;
    this.post({ type: 'pixel', ...this.#wanted });
  }
}
