import methodsStyle from '../../../media/methods-page.css';
import sheetStyle from '../../../media/sheet.css';
import type { Choosable, MethodPictures } from '../../shared/remedies';
import { html } from './html';
import { image } from './image';
import { standalone } from './standalone';

/**
 * One picture made grey in every way, side by side, as one page for a browser. Nothing is loaded from anywhere, no
 * script runs.
 * @param command how the picture is converted by a method, as it is typed
 */
export function methodsPage(
  title: string,
  methods: readonly Choosable[],
  { width, height, asItIs, grey }: MethodPictures,
  command: (method: string) => string,
): string {
  const shown = (bytes: Uint8Array, alt: string) =>
    image({ type: 'image/png', bytes, fullWidth: width, fullHeight: height }, alt);
  const page = html`
<main class="methods">
  <h1>${title}</h1>
  <p class="caution">The picture as it is, then all ways from colour to grey on it. Choose the one whose tones tell what you saw. A screen shows how tones move, not how they print.</p>
  <ol>
    <li><figure>${shown(asItIs, 'The picture as it is')}<figcaption><strong>As it is</strong></figcaption></figure></li>
    ${methods.flatMap(({ id, name, does }) => {
      const one = grey.find(each => each.id === id);
      if (!one) return [];
      return html`
    <li><figure>${shown(one.png, `Made grey: ${name}`)}<figcaption><strong>${name}</strong> ${does}<code>${command(id)}</code></figcaption></figure></li>`;
    })}
  </ol>
</main>`;
  return standalone(title, [sheetStyle, methodsStyle], page);
}
