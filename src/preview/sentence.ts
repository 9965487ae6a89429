import { type Html, html } from '../report/page/html';

/**
 * A translated sentence with parts of a page in its places {0}, {1} ...: what is looked up without values keeps them.
 * @example filled(t('Page {0}'), html`<select></select>`)
 */
export const filled = (translated: string, ...parts: Html[]): Html =>
  html`${translated.split(/\{(\d+)\}/).map((part, i) => (i % 2 === 0 ? part : parts[Number(part)]))}`;

/** What was said by others than the page: findings, forecasts and encodings are in English, whatever the page is in. */
export const inEnglish = (words: string | number): Html => html`<span lang="en">${words}</span>`;
