// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { html } from '../../report/page/html';
import { type Overlay, type OverlayId, overlaysOf } from '../../report/page/overlays';
import type { Marks } from '../../shared/look';
import type { Sheet } from '../../shared/sheet';
import type { Layers } from './canvas';
import { hatchTile } from './hatch';
import { runsOf } from './runs';
import { markTools, markWords, measuring } from './tools';

/** What is remembered of it. */
export interface MarkingState {
  marked: OverlayId[];
  /** Which of the sheet's conditions is meant. */
  condition: number;
}

/** Lets be chosen what is marked on the picture, and says how much of it that is. */
export class Marking {
  readonly #tools = document.createElement('div');
  readonly #told = document.createElement('div');
  #sheet: Sheet | undefined;
  #measured: Marks | 'asked' | undefined;
  /** To be drawn over the picture. */
  marks: Layers['marks'] = [];

  constructor(
    element: HTMLElement,
    private readonly state: MarkingState,
    private readonly remember: (change: Partial<MarkingState>) => void,
    private readonly ask: () => void,
    private readonly onChange: () => void,
  ) {
    this.#told.className = 'legend';
    this.#told.setAttribute('role', 'status');
    element.append(this.#tools, this.#told);
    this.#tools.addEventListener('change', event => this.#change(event));
  }

  about(sheet: Sheet) {
    this.#sheet = sheet;
    if (!sheet.conditions[this.state.condition]) this.remember({ condition: 0 });
    this.#show();
  }

  /** The picture may be another: what was measured is not true any more. */
  forget() {
    this.#measured = undefined;
    this.#show();
  }

  measured(marks: Marks) {
    this.#measured = marks;
    this.#show();
  }

  /** It could not be measured; the next choice asks again. */
  failed() {
    if (this.#measured === 'asked') this.#measured = undefined;
  }

  #show() {
    if (!this.#sheet) return;
    const { marked, condition } = this.state;
    const overlays = overlaysOf(this.#sheet, condition);
    const focused = document.activeElement?.id;
    this.#tools.innerHTML = markTools(overlays, marked, this.#sheet, condition).text;
    if (focused) this.#tools.querySelector<HTMLElement>(`#${focused}`)?.focus();
    for (const swatch of this.#tools.querySelectorAll('canvas')) drawSwatch(swatch);
    const chosen = overlays.filter(({ id }) => marked.includes(id));
    if (chosen.length > 0 && !this.#measured) {
      this.#measured = 'asked';
      this.ask();
    }
    const measured = typeof this.#measured === 'object' ? this.#measured : null;
    this.marks = measured ? chosen.map(overlay => marksOf(overlay, measured)) : [];
    const waiting = chosen.length > 0 && measuring();
    this.#told.innerHTML = html`${measured ? markWords(chosen, measured) : waiting}`.text;
    this.onChange();
  }

  #change({ target }: Event) {
    const { marked } = this.state;
    if (target instanceof HTMLInputElement) {
      const id = target.dataset.mark as OverlayId;
      this.remember({ marked: target.checked ? [...marked, id] : marked.filter(other => other !== id) });
    }
    if (target instanceof HTMLSelectElement) this.remember({ condition: Number(target.value) });
    this.#show();
  }
}

function marksOf(overlay: Overlay, measured: Marks): Layers['marks'][number] {
  const { width, height } = measured;
  return {
    id: overlay.id,
    grid: { width, height },
    runs: runsOf(measured, cell => overlay.marks(measured, cell)),
  };
}

function drawSwatch(swatch: HTMLCanvasElement) {
  const draw = swatch.getContext('2d')!;
  draw.fillStyle = draw.createPattern(hatchTile(swatch.dataset.swatch as OverlayId, 1), 'repeat')!;
  draw.fillRect(0, 0, swatch.width, swatch.height);
}
