// no-unit-test: it lives in a webview; test/e2e/suites/overview tests it there

/**
 * Pictures that are chosen in a list that wraps: by pointer and keys as file managers do it, one place in the tab order.
 * Elements that are hidden are passed over.
 */
export class Choice {
  #elements: HTMLElement[] = [];
  #at = 0;
  /** Where a range begins. */
  #anchor = 0;

  /** `onChange`: told after every change. `onOpen`: told what is to be opened. */
  constructor(
    private readonly list: HTMLElement,
    private readonly onChange: () => void,
    private readonly onOpen: (element: HTMLElement) => void,
  ) {
    list.addEventListener('click', event => this.#click(event));
    list.addEventListener('dblclick', event => {
      const element = this.#elementOf(event);
      if (element) onOpen(element);
    });
    list.addEventListener('keydown', event => this.#key(event));
  }

  /** `at`: where the keyboard is. */
  begin(chosen: (element: HTMLElement) => boolean, at: (element: HTMLElement) => boolean) {
    this.#elements = [...this.list.querySelectorAll<HTMLElement>('[role="option"]')];
    for (const element of this.#elements) this.#set(element, chosen(element));
    this.#at = Math.max(0, this.#elements.findIndex(at));
    this.#anchor = this.#at;
    this.settle();
  }

  /** What is shown has changed: what is hidden is chosen no more, and the keyboard comes to what is there. */
  settle() {
    for (const element of this.#elements) if (element.hidden) this.#set(element, false);
    if (this.#elements[this.#at]?.hidden)
      this.#at = Math.max(
        0,
        this.#elements.findIndex(({ hidden }) => !hidden),
      );
    for (const [i, element] of this.#elements.entries()) element.tabIndex = i === this.#at ? 0 : -1;
  }

  get chosen(): HTMLElement[] {
    return this.#elements.filter(element => element.getAttribute('aria-selected') === 'true');
  }

  get at(): HTMLElement | undefined {
    return this.#elements[this.#at];
  }

  /** All that are shown, or those of them that are meant. */
  chooseAll(isMeant: (element: HTMLElement) => boolean = () => true) {
    for (const element of this.#elements) this.#set(element, !element.hidden && isMeant(element));
    this.onChange();
  }

  chooseNone() {
    for (const element of this.#elements) this.#set(element, false);
    this.onChange();
  }

  #set(element: HTMLElement, chosen: boolean) {
    element.setAttribute('aria-selected', String(chosen));
  }

  #only(from: number, to: number) {
    const [first, last] = from < to ? [from, to] : [to, from];
    for (const [i, element] of this.#elements.entries())
      this.#set(element, i >= first && i <= last && !element.hidden);
  }

  #toggle(i: number) {
    const element = this.#elements[i];
    this.#set(element, element.getAttribute('aria-selected') !== 'true');
    this.#anchor = i;
  }

  #elementOf({ target }: Event): HTMLElement | null {
    return target instanceof Element ? target.closest<HTMLElement>('[role="option"]') : null;
  }

  #click(event: MouseEvent) {
    const element = this.#elementOf(event);
    if (!element) return;
    const i = this.#elements.indexOf(element);
    if (event.shiftKey) this.#only(this.#anchor, i);
    else if (event.ctrlKey || event.metaKey) this.#toggle(i);
    else {
      this.#only(i, i);
      this.#anchor = i;
    }
    this.#go(i);
    this.onChange();
  }

  #key(event: KeyboardEvent) {
    const { key, shiftKey } = event;
    const command = event.ctrlKey || event.metaKey;
    if (key === 'Enter') {
      event.preventDefault();
      if (this.at) this.onOpen(this.at);
    } else if (key === ' ') {
      event.preventDefault();
      this.#toggle(this.#at);
      this.onChange();
    } else if (key === 'a' && command) {
      event.preventDefault();
      this.chooseAll();
    } else if (key === 'Escape') this.chooseNone();
    else {
      const to = this.#towards(key);
      if (to === undefined) return;
      event.preventDefault();
      if (shiftKey) this.#only(this.#anchor, to);
      else this.#anchor = to;
      this.#go(to);
      this.onChange();
    }
  }

  #go(i: number) {
    if (this.at) this.at.tabIndex = -1;
    this.#at = i;
    this.#elements[i].tabIndex = 0;
    this.at?.focus();
    this.at?.scrollIntoView({ block: 'nearest' });
  }

  /** Where a key leads; undefined: it is none that leads anywhere. */
  #towards(key: string): number | undefined {
    const seen = this.#elements.flatMap(({ hidden }, i) => (hidden ? [] : i));
    const here = seen.indexOf(this.#at);
    switch (key) {
      case 'ArrowRight':
        return seen[Math.min(here + 1, seen.length - 1)];
      case 'ArrowLeft':
        return seen[Math.max(here - 1, 0)];
      case 'Home':
        return seen[0];
      case 'End':
        return seen[seen.length - 1];
      case 'ArrowDown':
        return this.#nextRow(seen.slice(here + 1));
      case 'ArrowUp':
        return this.#nextRow(seen.slice(0, here).reverse());
    }
  }

  /** The one nearest above or below in the next row of these, the nearest first; itself where there is none. */
  #nextRow(others: readonly number[]): number {
    const { left, top } = this.at!.getBoundingClientRect();
    let row: number | undefined;
    let nearest = this.#at;
    let distance = Number.POSITIVE_INFINITY;
    for (const i of others) {
      const box = this.#elements[i].getBoundingClientRect();
      if (Math.abs(box.top - top) < ROW) continue;
      row ??= box.top;
      if (Math.abs(box.top - row) >= ROW) break;
      if (Math.abs(box.left - left) < distance) {
        distance = Math.abs(box.left - left);
        nearest = i;
      }
    }
    return nearest;
  }
}

/** Boxes whose tops are as near as this, in CSS pixels, stand in one row. */
const ROW = 8;
