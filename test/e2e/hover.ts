import { until } from './editor';
import { workbenchEval } from './window';

export const HOVER = '.monaco-hover:not(.hidden)';

/** The words of the hover that is open; '' where none is. */
export const hoverText = (): Promise<string> =>
  workbenchEval<string>('body', `element.querySelector("${HOVER}")?.innerText ?? ""`);

/** Whether the open hover shows a picture of 480 x 320 pixels small, and the drawing of its forecast. */
export async function showsPictures(): Promise<boolean> {
  const images = await workbenchEval<string[]>(
    'body',
    `[...element.querySelectorAll("${HOVER} img")].map(img => img.src.slice(5, 15) + " " + img.naturalWidth + " x " + img.naturalHeight)`,
  );
  // in Markdown the editor adds a picture of its own
  return ['image/png; 120 x 80', 'image/svg+ 312 x 73'].every(image => images.includes(image));
}

export const hoverPictures = () => until('a thumbnail and a drawing', showsPictures, Boolean);
