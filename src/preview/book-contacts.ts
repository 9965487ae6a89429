// no-unit-test: it lives in a webview; test/e2e/suites/overview tests it there
import { drawingFilter } from '../report/page/drawing-filter';
import { html } from '../report/page/html';
import { mark } from '../report/page/marks';
import { strip } from '../report/page/strip';
import type { Contact, OverviewPicture, PictureKey } from '../shared/overview';
import { keyOf, post } from './book-state';
import { inEnglish } from './sentence';

/** So many are asked for at once: small answers, so that what comes into sight next waits for little. */
const BATCH = 12;
/** A picture is asked for a little before it comes into sight. */
const NEAR = '300px';

interface Kept {
  /** Of the content that is shown. */
  content: string;
  url: string | null;
  contact: Contact;
}

/** What is drawn of the pictures: asked for when they come into sight, few at a time, and kept while their content stays. */
export class Contacts {
  readonly #filters = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  readonly #kept = new Map<string, Kept>();
  readonly #near = new Set<HTMLElement>();
  /** Keys for which the last overview has been asked. */
  readonly #asked = new Set<string>();
  #pictures: readonly OverviewPicture[] = [];
  #waiting = false;
  #observer = new IntersectionObserver(entries => this.#seen(entries), {
    // inside a frame of another origin only a root of its own has margins
    root: document,
    rootMargin: NEAR,
  });

  constructor() {
    this.#filters.setAttribute('class', 'filters');
    this.#filters.setAttribute('aria-hidden', 'true');
    document.body.append(this.#filters);
  }

  /** The page was drawn anew: what is known is shown at once, and asked for again as it comes into sight. */
  begin(elements: Iterable<HTMLElement>, pictures: readonly OverviewPicture[]) {
    this.#observer.disconnect();
    this.#near.clear();
    this.#asked.clear();
    this.#waiting = false;
    this.#pictures = pictures;
    const present = new Set(pictures.map(keyOf));
    for (const [key, { url }] of this.#kept) {
      if (present.has(key)) continue;
      if (url) URL.revokeObjectURL(url);
      this.#kept.delete(key);
    }
    this.#filters.replaceChildren();
    for (const element of elements) {
      const at = Number(element.dataset.at);
      const kept = this.#kept.get(keyOf(pictures[at]));
      if (kept) this.#draw(element, at, kept);
      this.#observer.observe(element);
    }
  }

  receive(contacts: readonly (PictureKey & Contact)[]) {
    this.#waiting = false;
    const indices = new Map(this.#pictures.map((picture, i) => [keyOf(picture), i]));
    for (const { path, page, ...contact } of contacts) {
      const key = keyOf({ path, page });
      const at = indices.get(key);
      const element = at !== undefined && document.getElementById(`contact-${at}`);
      if (!element) continue;
      const kept = this.#keep(key, this.#pictures[at].content, contact);
      this.#draw(element, at, kept);
    }
    this.#ask();
  }

  #seen(entries: readonly IntersectionObserverEntry[]) {
    for (const { target, isIntersecting } of entries) {
      if (isIntersecting) this.#near.add(target as HTMLElement);
      else this.#near.delete(target as HTMLElement);
    }
    this.#ask();
  }

  #ask() {
    if (this.#waiting) return;
    const next = [...this.#near]
      .map(element => this.#pictures[Number(element.dataset.at)])
      .filter(picture => !this.#asked.has(keyOf(picture)))
      .slice(0, BATCH);
    if (!next.length) return;
    this.#waiting = true;
    for (const picture of next) this.#asked.add(keyOf(picture));
    post({
      type: 'want',
      pictures: next.map(({ path, page, content }) => {
        const kept = this.#kept.get(keyOf({ path, page }));
        return { path, page, have: kept?.content === content && kept.url !== null };
      }),
    });
  }

  #keep(key: string, content: string, contact: Contact): Kept {
    const before = this.#kept.get(key);
    let url = before?.content === content ? before.url : null;
    if (contact.small) {
      const { bytes, type } = contact.small;
      url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
    }
    if (before?.url && before.url !== url) URL.revokeObjectURL(before.url);
    // its bytes are the browser's now
    const kept = { content, url, contact: { ...contact, small: null } };
    this.#kept.set(key, kept);
    return kept;
  }

  #draw(element: HTMLElement, at: number, { url, contact: { trouble, drawings, greys } }: Kept) {
    const frame = element.querySelector('.frame')!;
    if (url) {
      const image = frame.querySelector('img') ?? new Image();
      if (image.src !== url) image.src = url;
      image.alt = '';
      image.draggable = false;
      for (const order of [0, 1, 2]) {
        const id = `filter-${at}-${order}`;
        document.getElementById(id)?.remove();
        if (drawings)
          this.#filters.insertAdjacentHTML(
            'beforeend',
            drawingFilter(drawings[order], id, this.#pictures[at].encoding).text,
          );
        image.style.setProperty(`--drawn-${order}`, drawings ? `url(#${id})` : 'none');
      }
      frame.replaceChildren(image);
    } else if (trouble) frame.innerHTML = html`${mark('mend')}${inEnglish(trouble)}`.text;
    element.querySelector('.greys')!.innerHTML = greys.length ? strip('ten-greys', greys).text : '';
    element.dataset.drawn = '';
  }
}
