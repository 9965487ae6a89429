// no-unit-test: it lives in a webview; test/e2e/suites/convert/preview.test.ts tests it there
import { t } from '@vscode/l10n';
import { html } from '../report/page/html';
import type { FromPage, ToPage } from '../shared/preview-protocol';
import type { Made, MethodPictures, Remedies } from '../shared/remedies';
import type { Sheet } from '../shared/sheet';
import { Comparison } from './comparison';
import { type Choice, outcome, remedySection } from './remedy-page';
import { filled, inEnglish } from './sentence';
import { converted } from './sides';

/** What is remembered of it. Without an encoding the recommended one is chosen. */
export interface RemedyState extends Omit<Choice, 'to'> {
  to: Made['to'] | null;
  wipe: number;
}

export const remedyBegin: RemedyState = { to: null, method: 'lightness', view: 'wipe', zoom: 1, wipe: 50 };

/** In these the way from colour to grey makes a difference. */
const COLOURED: readonly string[] = ['colour', 'rgb-residual', 'rgb-toned'];
/** Of these no grey can be made, or none is wanted. */
const NEVER: readonly string[] = ['unreadable', 'bilevel'];

/** The section that shows what a conversion would do. Nothing is asked for until somebody comes near it. */
export class Remedy {
  readonly element = document.createElement('section');
  readonly #comparison = new Comparison(wipe => this.remember({ wipe }), converted());
  #remedies: Remedies | undefined;
  #coloured = false;
  #near = false;
  #small: MethodPictures | undefined;
  #urls: string[] = [];

  constructor(
    private readonly state: RemedyState,
    private readonly remember: (change: Partial<RemedyState>) => void,
    private readonly post: (message: FromPage) => void,
  ) {
    const { element } = this;
    element.className = 'remedy';
    element.id = 'remedy';
    element.hidden = true;
    element.setAttribute('aria-labelledby', 'remedy-title');
    element.addEventListener('change', event => this.#change(event));
    element.addEventListener('click', event => this.#click(event));
    new IntersectionObserver(
      entries => {
        if (this.#near || !entries.some(({ isIntersecting }) => isIntersecting)) return;
        this.#near = true;
        this.#ask();
      },
      { rootMargin: '200px' },
    ).observe(element);
  }

  /** The picture or its book changed: what was shown is not true any more. */
  offer(remedies: Remedies, { encoding }: Sheet, writable: boolean) {
    this.element.hidden = NEVER.includes(encoding.id);
    const coloured = COLOURED.includes(encoding.id);
    const drawn = this.#remedies && this.#coloured === coloured;
    const same = drawn && this.#remedies!.recommended.to === remedies.recommended.to;
    this.#remedies = remedies;
    this.#coloured = coloured;
    if (!same) {
      this.element.innerHTML = remedySection(remedies, this.#choice, coloured).text;
      this.#find('panes').replaceWith(this.#comparison.element);
      this.#comparison.set({ ...this.state });
    }
    this.#find('convert').hidden = !writable;
    this.#find('remedy-before').textContent = t('As it is: {0}', encoding.id);
    this.#say();
    if (this.#near) this.#ask();
  }

  /** The picture as it is; it comes again when it has changed. */
  async before(png: Uint8Array<ArrayBuffer>) {
    this.#small = undefined;
    await this.#comparison.showBefore(png);
    if (this.#near) this.#ask();
  }

  receive(message: Extract<ToPage, { type: `${string}candidate` | `${string}methods` | 'converted' }>) {
    if (!this.#remedies) return;
    switch (message.type) {
      case 'candidate': {
        const { candidate } = message;
        const { to, method } = this.#choice;
        if (candidate.to !== to || candidate.method !== method) return;
        this.#busy('');
        this.#find('remedy-outcome').innerHTML = outcome(candidate).text;
        this.#find('remedy-after').textContent = t('As it would be: {0}', candidate.found.id);
        return void this.#comparison.showAfter(candidate.raster.png as Uint8Array<ArrayBuffer>);
      }
      case 'no-candidate':
        this.#find('remedy-outcome').replaceChildren();
        return this.#busy(t('It cannot be converted so: {0}', message.message));
      case 'methods':
        this.#small = message.pictures;
        return this.#hang();
      case 'no-methods':
        return;
      case 'converted':
        this.#find('remedy-done').textContent = message.words;
    }
  }

  /** From the advice: the recommended encoding, in sight. */
  lead() {
    if (!this.#remedies) return;
    const { to } = this.#remedies.recommended;
    const radio = document.getElementById(`to-${to}`) as HTMLInputElement;
    radio.checked = true;
    this.#near = true;
    this.#choose({ to });
    this.element.scrollIntoView({ block: 'start' });
    radio.focus({ preventScroll: true });
  }

  get #choice(): Choice {
    return { ...this.state, to: this.state.to ?? this.#remedies!.recommended.to };
  }

  #find(id: string): HTMLElement {
    return this.element.querySelector<HTMLElement>(`#${id}`)!;
  }

  #change({ target }: Event) {
    if (!(target instanceof HTMLInputElement)) return;
    const { name, value } = target;
    if (name === 'to') this.#choose({ to: value as Made['to'] });
    if (name === 'method') this.#choose({ method: value });
    if (name === 'view') this.#look({ view: value as Choice['view'] });
    if (name === 'zoom') this.#look({ zoom: Number(value) });
  }

  #click({ target }: Event) {
    if (target instanceof Element && target.closest('#convert')) {
      const { to, method } = this.#choice;
      this.post({ type: 'convert', to, method });
    }
  }

  #choose(change: Partial<Made>) {
    this.remember(change);
    this.#say();
    this.#ask();
  }

  #look(change: Partial<RemedyState>) {
    this.remember(change);
    this.#comparison.set({ ...this.state });
  }

  #ask() {
    if (!this.#remedies || this.element.hidden) return;
    const { to, method } = this.#choice;
    this.#busy(t('The picture is being converted, to be shown only.'));
    this.post({ type: 'candidate', to, method });
    if (this.#coloured && !this.#small) this.post({ type: 'methods' });
  }

  #busy(text: string) {
    this.#find('remedy-status').textContent = text;
  }

  /** What the chosen encoding means. */
  #say() {
    const { encodings, recommended } = this.#remedies!;
    const { to } = this.#choice;
    const does = encodings.find(({ id }) => id === to)?.does ?? '';
    const why =
      to === recommended.to && html` ${filled(t('Recommended here: {0}.'), inEnglish(recommended.why))}`;
    this.#find('remedy-does').innerHTML = html`${inEnglish(does)}${why}`.text;
  }

  /** Small pictures to their names. */
  #hang() {
    for (const url of this.#urls.splice(0)) URL.revokeObjectURL(url);
    const { asItIs, grey } = this.#small!;
    const pictures = new Map<string, Uint8Array>([
      ['', asItIs],
      ...grey.map(each => [each.id, each.png] as const),
    ]);
    for (const place of this.element.querySelectorAll<HTMLElement>('.small-picture')) {
      const png = pictures.get(place.dataset.method!);
      if (!png) continue;
      const url = URL.createObjectURL(new Blob([png as Uint8Array<ArrayBuffer>], { type: 'image/png' }));
      this.#urls.push(url);
      const image = new Image();
      image.src = url;
      image.alt = '';
      place.replaceChildren(image);
    }
  }
}
