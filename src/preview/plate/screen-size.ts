// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { t } from '@vscode/l10n';
import type { PrintedSize } from '../../shared/sheet';
import { measured, printedWords } from './printed';
import { RULER } from './tools';
import type { Size } from './view';

/** Says how large the picture is printed, and lets the screen be measured with a ruler, once. */
export class ScreenSize {
  /** CSS pixels on an inch, as measured; null: nobody has. */
  ppi: number | null = null;

  constructor(
    private readonly element: HTMLElement,
    onMeasured: (ppi: number) => void,
  ) {
    this.#find('ruler-use').addEventListener('click', () => {
      const ppi = measured(RULER, (this.#find('ruler-mm') as HTMLInputElement).valueAsNumber);
      this.#find('ruler-told').textContent = ppi
        ? ''
        : t('No screen is so: give what the ruler says, in millimetres.');
      if (!ppi) return;
      onMeasured(ppi);
      (this.#find('measure') as HTMLDetailsElement).open = false;
    });
  }

  /** In whatever size it is shown, so that nothing moves under the pointer. Null: nobody knows how it is printed. */
  tell(shown: { picture: Size; printed: PrintedSize } | null) {
    this.#find('printed').hidden = !shown;
    if (shown) this.#find('printed-told').textContent = printedWords(shown.picture, shown.printed, this.ppi);
  }

  #find(id: string): HTMLElement {
    return this.element.querySelector<HTMLElement>(`#${id}`)!;
  }
}
