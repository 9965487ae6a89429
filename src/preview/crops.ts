// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../report/page/html';
import { choice, type Shown } from '../report/page/orders';
import type { Sheet } from '../shared/sheet';
import type { Plate } from './plate';
import { inEnglish } from './sentence';
import { tint, tintTable } from './tint-table';

/** What is remembered of it. */
export interface CropsState {
  /** How many times stronger the tint is drawn than it is forecast. */
  times: 1 | 2 | 4;
}

export const cropsBegin: CropsState = { times: 1 };

/** CSS pixels: longest edge of a drawing, and width of the neutral greys beside it. */
const EDGE = 280;
const PATCH = 22;
/** Neutral greys beside every drawing: a tint is seen against them. */
const GREYS = ['#ddd', '#999', '#444'];

/** What is seen of the picture above, drawn as one possible order of every print: side by side, on a neutral ground. */
export class Crops {
  readonly element = document.createElement('section');
  #sheet: Sheet | undefined;
  #shown: Shown = { order: 0, seen: 'alone' };
  #due = false;

  constructor(
    private readonly state: CropsState,
    private readonly remember: (change: Partial<CropsState>) => void,
    private readonly plate: Plate,
  ) {
    this.element.className = 'crops';
    this.element.setAttribute('aria-labelledby', 'crops-title');
    this.element.addEventListener('change', ({ target }) => {
      if (!(target instanceof HTMLInputElement) || target.name !== 'times') return;
      this.remember({ times: Number(target.value) as CropsState['times'] });
      this.#draw();
    });
    plate.element.addEventListener('seen', () => this.#soon());
  }

  /** `order`, `seen`: which possible order, and how it is seen, as with the strips. */
  about(sheet: Sheet, { order, seen }: Shown) {
    const another = this.#sheet !== sheet;
    this.#sheet = sheet;
    this.#shown = { order, seen };
    this.element.hidden = sheet.conditions.length === 0;
    if (another) this.element.innerHTML = frame(this.state).text;
    this.#soon();
  }

  /** A view that moves is drawn once for every picture of the screen. */
  #soon() {
    if (this.#due) return;
    this.#due = true;
    requestAnimationFrame(() => {
      this.#due = false;
      this.#draw();
    });
  }

  #draw() {
    const place = this.element.querySelector('.crop-row');
    const part = this.plate.part(EDGE);
    if (!this.#sheet || !part || !place) return;
    const { conditions, scale, encoding } = this.#sheet;
    const { order, seen } = this.#shown;
    const { times } = this.state;
    const residual = encoding.id === 'rgb-residual';
    const file = cropOf(part, t('The file, as a screen shows it'), t('no forecast'));
    const printed = conditions.map(({ process, paper, orders }) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [part.width, part.height];
      const draw = canvas.getContext('2d')!;
      draw.drawImage(part, 0, 0);
      const pixels = draw.getImageData(0, 0, canvas.width, canvas.height);
      tint(pixels.data, tintTable(scale.lightness, orders[order].lab[seen], times), residual);
      draw.putImageData(pixels, 0, 0);
      const name = `${process}, ${paper}`;
      return cropOf(canvas, name, wordsOf(order, times), inEnglish(name));
    });
    place.replaceChildren(file, ...printed);
  }
}

const wordsOf = (order: number, times: number) =>
  times === 1
    ? t('possible order {0}', order + 1)
    : t(
        'possible order {0}, its tint drawn {1} times as strong as forecast: no print looks so',
        order + 1,
        times,
      );

const frame = ({ times }: CropsState): Html => html`
<h3 id="crops-title">${t('The same part of the picture on every print')}</h3>
<p class="caution">${t('What is seen of the picture above, drawn as one possible order. Beside each stand three neutral greys. The tables below say it in numbers.')}</p>
${choice(
  'times',
  t('Tint drawn'),
  [1, 2, 4].map(n => ({
    id: `times-${n}`,
    value: n,
    words: n === 1 ? t('as forecast') : t('{0} times as strong', n),
    checked: n === times,
  })),
)}
<div class="crop-row"></div>`;

/** A drawing with neutral greys on a common edge, and what it is; `shown`: the name as the page shows it. */
function cropOf(
  canvas: HTMLCanvasElement,
  name: string,
  words: string,
  shown: Html = html`${name}`,
): HTMLElement {
  const figure = document.createElement('figure');
  const pair = document.createElement('div');
  pair.className = 'pair';
  const patch = document.createElement('canvas');
  [patch.width, patch.height] = [PATCH, canvas.height];
  const draw = patch.getContext('2d')!;
  for (const [i, grey] of GREYS.entries()) {
    draw.fillStyle = grey;
    draw.fillRect(0, Math.floor((i * canvas.height) / GREYS.length), PATCH, canvas.height);
  }
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', t('{0}: {1}', name, words));
  patch.setAttribute('aria-hidden', 'true');
  pair.append(canvas, patch);
  figure.append(pair);
  figure.insertAdjacentHTML(
    'beforeend',
    html`<figcaption><strong>${shown}</strong><span>${words}</span></figcaption>`.text,
  );
  return figure;
}
