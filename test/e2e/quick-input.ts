import { until } from './editor';
import { press, type, workbenchEval } from './window';

/** The box that takes what is typed: its words above, and what stands in it; null where none has the focus. */
const asking = () =>
  workbenchEval<{ above: string; value: string } | null>(
    'body',
    `(() => {
      const box = document.activeElement?.closest('.quick-input-widget');
      const text = part => box.querySelector(part)?.innerText ?? '';
      return box && { above: text('.quick-input-title') + text('.quick-input-message'), value: document.activeElement.value };
    })()`,
  );

/** Types an answer once the box with those words above takes it, in place of what is there, and sees that it stands there. */
export async function answer(above: RegExp, text: string) {
  // the words stay in a box that is hidden, so that the last one would seem to ask again
  await until(`a box with ${above}`, asking, seen => seen !== null && above.test(seen.above));
  await press('Control+a');
  if (text) await type(text);
  await until(`"${text}" in the box`, asking, seen => seen?.value === text);
}
