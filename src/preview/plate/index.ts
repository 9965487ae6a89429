// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { t } from '@vscode/l10n';
import type { Detail } from '../../shared/look';
import type { FromPage, ToPage } from '../../shared/preview-protocol';
import type { Sheet } from '../../shared/sheet';
import { drawLayers, type Layers } from './canvas';
import { CloseLook } from './close-look';
import { type Hand, listen } from './gestures';
import { Marking, type MarkingState } from './marking';
import { printedScale } from './printed';
import { ScreenSize } from './screen-size';
import { keyHelp, zoomTools } from './tools';
import { inPicture, kept, moved, type Point, type Size, seen, type View, whole, zoomed } from './view';

/** What is remembered of it. */
export interface PlateState extends MarkingState {
  /** `free`: by `scale`; the others follow window and screen. */
  size: 'whole' | 'one' | 'printed' | 'free';
  scale: number;
  x: number;
  y: number;
}

export const plateBegin: PlateState = { size: 'whole', scale: 1, x: 0, y: 0, marked: [], condition: 0 };

const BUTTON = 1.5;
/** The window on the picture is no higher than this, CSS pixels and share of the editor's. */
const HIGHEST = { pixels: 676, share: 0.66 };
const LOWEST = 200;
/** What is clicked for the picture's sake. */
const TOOLS = '.plate-tools button, .marks label, .marks input';

/**
 * The picture itself, on a neutral ground whatever the theme, since surroundings tint a grey: to be looked at as closely
 * as its file allows.
 */
export class Plate {
  readonly element = document.createElement('div');
  readonly #figure = document.createElement('figure');
  readonly #canvas = document.createElement('canvas');
  readonly #words = document.createElement('p');
  readonly #look: CloseLook;
  readonly #screen: ScreenSize;
  readonly #marking: Marking;
  #sheet: Sheet | undefined;
  #raster: ImageBitmap | undefined;
  #picture: Size = { width: 1, height: 1 };
  #view: View = { scale: 1, x: 0, y: 0 };
  #detail: Layers['detail'] = null;
  /** The keyboard's reading point, and where the pointer was read last. */
  #cursor: Point | null = null;
  #pointed: Point | null = null;

  constructor(
    private readonly state: PlateState,
    private readonly remember: (change: Partial<PlateState>) => void,
    private readonly post: (message: FromPage) => void,
  ) {
    const { element } = this;
    element.className = 'close';
    this.#figure.className = 'picture';
    this.#canvas.id = 'picture';
    this.#canvas.tabIndex = 0;
    this.#canvas.setAttribute('role', 'application');
    this.#canvas.setAttribute('aria-describedby', 'reading');
    this.#figure.append(this.#words, this.#canvas);
    element.innerHTML = zoomTools().text;
    element.prepend(this.#figure);
    this.#marking = new Marking(
      element,
      state,
      remember,
      () => post({ type: 'marks' }),
      () => this.#draw(),
    );
    element.insertAdjacentHTML('beforeend', keyHelp().text);
    this.#look = new CloseLook(post, words => this.#tell(words));
    this.#tell('');
    this.#screen = new ScreenSize(element, ppi => post({ type: 'screen', ppi }));
    listen(this.#canvas, this.#hand);
    element.addEventListener('click', event => this.#click(event));
    new ResizeObserver(() => this.#settle()).observe(this.#figure);
    this.#say(t('The picture is being read.'));
  }

  /** Another sheet of the same picture, or of it after a change. */
  about(sheet: Sheet) {
    this.#sheet = sheet;
    const name = sheet.path.slice(sheet.path.lastIndexOf('/') + 1);
    this.#canvas.setAttribute('aria-label', t('{0}: the picture. Keys are told below.', name));
    this.#marking.about(sheet);
    this.#settle();
  }

  async show({ png, orientation, fullWidth, fullHeight }: Extract<ToPage, { type: 'raster' }>) {
    const bitmap = await createImageBitmap(new Blob([png], { type: 'image/png' }));
    this.#raster?.close();
    this.#raster = bitmap;
    // the picture may have changed: what was read of it is not true any more
    this.#detail = null;
    this.#cursor = null;
    this.#pointed = null;
    this.#look.read(null);
    const lying = orientation >= 5;
    this.#picture = {
      width: lying ? fullHeight : fullWidth,
      height: lying ? fullWidth : fullHeight,
    };
    this.#words.hidden = true;
    this.element.classList.remove('empty');
    this.#marking.forget();
    this.#settle();
  }

  async sharpen({ box, png }: Detail) {
    const bitmap = await createImageBitmap(new Blob([png as Uint8Array<ArrayBuffer>], { type: 'image/png' }));
    this.#detail = { box, bitmap };
    this.#canvas.dataset.sharp = [box.x, box.y, box.width, box.height].join(' ');
    this.#draw();
  }

  receive(message: Extract<ToPage, { type: 'detail' | 'pixel' | 'marks' | 'no-look' | 'screen' }>) {
    switch (message.type) {
      case 'detail':
        return void this.sharpen(message.detail);
      case 'pixel':
        return this.#look.tell(message.pixel);
      case 'marks':
        return this.#marking.measured(message.marks);
      case 'no-look':
        this.#look.forget();
        this.#marking.failed();
        return this.#tell(message.message);
      case 'screen':
        this.#screen.ppi = message.ppi;
        return this.#settle();
    }
  }

  /** It cannot be shown: what was seen of it before is not true any more, and goes with all that works on it. */
  lose(why: string) {
    this.#raster?.close();
    this.#raster = undefined;
    this.#look.noPart();
    this.#look.read(null);
    this.#say(why);
    this.element.classList.add('empty');
  }

  #say(text: string) {
    this.#words.textContent = text;
    this.#words.hidden = false;
  }

  /** What is seen of the picture now, without marks, no wider than `width` CSS pixels; null before it is there. */
  part(width: number): HTMLCanvasElement | null {
    if (!this.#raster) return null;
    const box = seen(this.#view, this.#picture, this.#window);
    const scale = Math.min(1, width / box.width, width / box.height);
    const window = { width: Math.round(box.width * scale), height: Math.round(box.height * scale) };
    const view = { scale, x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const canvas = document.createElement('canvas');
    const layers = { picture: this.#picture, raster: this.#raster, detail: this.#detail };
    drawLayers(canvas, { ...layers, marks: [], cursor: null }, view, window, 1);
    return canvas;
  }

  readonly #hand: Hand = {
    zoom: (factor, at) => {
      const { width, height } = this.#window;
      const middle = { x: width / 2, y: height / 2 };
      this.#go(
        zoomed(this.#view, this.#limited(this.#view.scale * factor), at ?? middle, this.#window),
        'free',
      );
    },
    move: (dx, dy) => {
      const { x, y } = this.#view;
      this.#go(moved(this.#view, dx, dy), this.state.size);
      return this.#view.x !== x || this.#view.y !== y;
    },
    whole: () => this.#go(this.#whole, 'whole'),
    oneToOne: () => this.#go({ ...this.#view, scale: this.#scaleOf('one') }, 'one'),
    printed: () => this.#go({ ...this.#view, scale: this.#scaleOf('printed') }, 'printed'),
    step: (dx, dy) => {
      const stride = Math.max(1, Math.round(1 / this.#view.scale));
      const middle = { x: Math.floor(this.#view.x), y: Math.floor(this.#view.y) };
      const { x, y } = this.#cursor ?? this.#pointed ?? middle;
      const { width, height } = this.#picture;
      const clamp = (value: number, most: number) => Math.min(most - 1, Math.max(0, value));
      this.#cursor = { x: clamp(x + dx * stride, width), y: clamp(y + dy * stride, height) };
      this.#follow(this.#cursor);
      this.#look.read(this.#cursor);
      this.#draw();
    },
    point: at => {
      const place = at && inPicture(this.#view, at, this.#window);
      const { width, height } = this.#picture;
      const inside = place && place.x >= 0 && place.y >= 0 && place.x < width && place.y < height;
      if (this.#cursor) {
        // a pointer that leaves does not take the keyboard's place away
        if (!inside) return;
        this.#cursor = null;
        this.#draw();
      }
      this.#pointed = inside ? { x: Math.floor(place.x), y: Math.floor(place.y) } : null;
      this.#look.read(this.#pointed);
    },
    turn: to => {
      const path = this.#sheet?.place?.[to];
      if (path) this.post({ type: 'open', path });
    },
  };

  get #window(): Size {
    return { width: this.#canvas.clientWidth, height: this.#canvas.clientHeight };
  }

  /** Never smaller than what fits, unless its print is. */
  #limited(scale: number): number {
    return Math.max(scale, Math.min(this.#whole.scale, this.#scaleOf('printed')));
  }

  get #whole(): View {
    return whole(this.#picture, this.#window);
  }

  #scaleOf(size: 'one' | 'printed'): number {
    if (size === 'one') return 1 / devicePixelRatio;
    const printed = this.#sheet?.size?.printed;
    return printed ? printedScale(printed, this.#screen.ppi) : 1;
  }

  /** Back to what is remembered: the window, the screen or the picture is another. */
  #settle() {
    if (!this.#raster) return;
    const { width, height } = this.#picture;
    const room = Math.max(LOWEST, Math.min(HIGHEST.pixels, innerHeight * HIGHEST.share));
    const fits = whole(this.#picture, { width: this.#figure.clientWidth, height: room });
    // a low picture needs no high window; a tall one keeps some ground
    const wanted = Math.max(LOWEST, Math.min(room, Math.ceil(height * fits.scale) + 56));
    this.#canvas.style.height = `${wanted}px`;
    const { size, scale, x, y } = this.state;
    const there = x > 0 || y > 0 ? { x, y } : { x: width / 2, y: height / 2 };
    if (size === 'whole') this.#go(this.#whole, size);
    else this.#go({ ...there, scale: size === 'free' ? scale : this.#scaleOf(size) }, size);
  }

  #go(view: View, size: PlateState['size']) {
    if (!this.#raster) return;
    const least = Math.min(this.#whole.scale, this.#scaleOf('printed'));
    this.#view = kept(view, this.#picture, this.#window, least);
    this.remember({ size, ...this.#view });
    const perPixel = this.#view.scale * devicePixelRatio;
    if (perPixel > (1.01 * this.#raster.width) / this.#picture.width)
      this.#look.part(seen(this.#view, this.#picture, this.#window), perPixel);
    else this.#look.noPart();
    this.#tellSize();
    this.#draw();
  }

  #tellSize() {
    const { size } = this.state;
    for (const [id, name] of [
      ['zoom-whole', 'whole'],
      ['zoom-one', 'one'],
      ['zoom-printed', 'printed'],
    ] as const)
      this.#find(id).setAttribute('aria-pressed', String(size === name));
    const percent = 100 * this.#view.scale * devicePixelRatio;
    this.#find('zoom-told').textContent = `${Number(percent.toPrecision(percent < 10 ? 2 : 3))} %`;
    const printed = this.#sheet?.size?.printed;
    this.#screen.tell(printed ? { picture: this.#picture, printed } : null);
  }

  /** A reading point that left the window is fetched back into its middle. */
  #follow({ x, y }: Point) {
    const box = seen(this.#view, this.#picture, this.#window);
    const inside = x >= box.x && x < box.x + box.width && y >= box.y && y < box.y + box.height;
    if (!inside) this.#go({ ...this.#view, x, y }, this.state.size);
  }

  #draw() {
    if (!this.#raster) return;
    const layers = { picture: this.#picture, raster: this.#raster, detail: this.#detail };
    drawLayers(
      this.#canvas,
      { ...layers, marks: this.#marking.marks, cursor: this.#cursor },
      this.#view,
      this.#window,
      devicePixelRatio,
    );
    this.element.dispatchEvent(new Event('seen'));
  }

  #tell(words: string) {
    this.#find('reading').textContent = words || howToRead();
  }

  #click({ target, detail }: MouseEvent) {
    // who points at a tool goes on with the picture's keys; who came to it by keyboard stays there
    if (detail > 0 && target instanceof Element && target.closest(TOOLS))
      requestAnimationFrame(() => this.#canvas.focus({ preventScroll: true }));
    const id = target instanceof Element && target.closest('button')?.id;
    if (id === 'zoom-whole') this.#hand.whole();
    if (id === 'zoom-one') this.#hand.oneToOne();
    if (id === 'zoom-printed') this.#hand.printed();
    if (id === 'zoom-in') this.#hand.zoom(BUTTON);
    if (id === 'zoom-out') this.#hand.zoom(1 / BUTTON);
  }

  #find(id: string): HTMLElement {
    return this.element.querySelector<HTMLElement>(`#${id}`)!;
  }
}

const howToRead = () =>
  t('Point at the picture, or press Shift and an arrow key in it, and its stored values stand here.');
