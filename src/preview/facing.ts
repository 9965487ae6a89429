// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../report/page/html';
import { choice } from '../report/page/orders';
import type { Facing, FacingPicture } from '../shared/facing';
import type { FromPage } from '../shared/preview-protocol';
import type { Sheet } from '../shared/sheet';
import { filled } from './sentence';
import { tableOf, tint } from './tint-table';

/** What is remembered of it. */
export interface FacingState {
  /** Which possible order is drawn, from 0; -1: the files. */
  drawn: number;
  /** Which of the conditions is meant. */
  on: number;
}

export const facingBegin: FacingState = { drawn: 0, on: 0 };

const drawnWords = () => [t('one possible order'), t('another'), t('a third')];

/** The pictures of a spread beside each other, as files or all in the same possible order. */
export class FacingPages {
  readonly element = document.createElement('section');
  #facing: Facing = { conditions: [], pictures: [] };

  constructor(
    private readonly state: FacingState,
    private readonly remember: (change: Partial<FacingState>) => void,
    private readonly post: (message: FromPage) => void,
  ) {
    this.element.className = 'facing';
    this.element.hidden = true;
    this.element.setAttribute('aria-labelledby', 'facing-title');
    this.element.addEventListener('change', ({ target }) => {
      if (target instanceof HTMLInputElement) this.remember({ drawn: Number(target.value) });
      if (target instanceof HTMLSelectElement) this.remember({ on: Number(target.value) });
      void this.#draw();
    });
  }

  about({ place }: Sheet) {
    if (place?.beside.length) this.post({ type: 'facing' });
    else this.show({ conditions: [], pictures: [] });
  }

  show(facing: Facing) {
    this.#facing = facing;
    this.element.hidden = facing.pictures.length < 2;
    if (!facing.conditions[this.state.on]) this.state.on = 0;
    if (!this.element.hidden) {
      const focused = document.activeElement?.id;
      this.element.innerHTML = frame(facing, this.state).text;
      if (focused) this.element.querySelector<HTMLElement>(`#${focused}`)?.focus();
      void this.#draw();
    }
  }

  async #draw() {
    const { pictures } = this.#facing;
    const { drawn, on } = this.state;
    const figures = await Promise.all(pictures.map(picture => figureOf(picture, drawn, on)));
    // it may have been drawn anew meanwhile
    if (this.#facing.pictures === pictures && this.state.drawn === drawn && this.state.on === on)
      this.element.querySelector('.pages')?.replaceChildren(...figures);
  }
}

const frame = ({ conditions }: Facing, { drawn, on }: FacingState): Html => html`
<h2 id="facing-title" class="large">${t('On the same spread')}</h2>
<p class="caution">${t('What lies side by side is compared: two greys that part here are seen as two.')} ${conditions.length > 0 && t('A possible order is the same for all of them; which one it will be no one knows.')}</p>
<div class="facing-bar">
  ${
    conditions.length > 0 &&
    choice('facing', t('Drawn'), [
      ...drawnWords().map((words, i) => ({ id: `facing-${i}`, value: i, words, checked: i === drawn })),
      { id: 'facing-file', value: -1, words: t('the files'), checked: drawn < 0 },
    ])
  }
  ${conditions.length > 1 && html`<label>${filled(t('on {0}'), html`<select id="facing-on" lang="en">${conditions.map((words, i) => html`<option value="${i}"${i === on && html` selected`}>${words}</option>`)}</select>`)}</label>`}
</div>
<div class="pages"></div>`;

async function figureOf(picture: FacingPicture, drawn: number, on: number): Promise<HTMLElement> {
  const { path, own, small, residual, drawings } = picture;
  const name = path.slice(path.lastIndexOf('/') + 1);
  const drawing = drawn < 0 ? undefined : drawings[on]?.[drawn];
  const words = drawing ? drawnWords()[drawn] : t('the file, no forecast');
  const figure = document.createElement('figure');
  if (small) {
    const canvas = await canvasOf(small);
    if (drawing) {
      const draw = canvas.getContext('2d')!;
      const pixels = draw.getImageData(0, 0, canvas.width, canvas.height);
      tint(pixels.data, tableOf(drawing), residual);
      draw.putImageData(pixels, 0, 0);
    }
    canvas.setAttribute('role', 'img');
    canvas.setAttribute('aria-label', t('{0}: {1}', name, words));
    figure.style.flexGrow = String(canvas.width / canvas.height);
    figure.append(canvas);
  }
  const caption = own
    ? filled(t('{0}, this picture: {1}'), html`<strong>${name}</strong>`, html`${words}`)
    : filled(
        t('{0}: {1}'),
        html`<button type="button" class="link" data-open="${path}">${name}</button>`,
        html`${small ? words : t('it cannot be shown')}`,
      );
  figure.insertAdjacentHTML('beforeend', html`<figcaption>${caption}</figcaption>`.text);
  return figure;
}

async function canvasOf({ type, bytes }: NonNullable<FacingPicture['small']>): Promise<HTMLCanvasElement> {
  const bitmap = await createImageBitmap(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [bitmap.width, bitmap.height];
  canvas.getContext('2d')!.drawImage(bitmap, 0, 0);
  bitmap.close();
  return canvas;
}
