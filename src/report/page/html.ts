import { safe } from '../text/style';

/** Text that is safe to put into a page: made by `html` only, so that nothing unescaped gets in. */
export class Html {
  constructor(readonly text: string) {}
}

type Value = Html | string | number | null | undefined | false | readonly Value[];

/** A template whose values are escaped, in text and in quoted attributes, control characters of names written out; lists are joined, null and false are nothing. */
export function html(strings: TemplateStringsArray, ...values: Value[]): Html {
  return new Html(strings.reduce((text, part, i) => text + textOf(values[i - 1]) + part));
}

function textOf(value: Value): string {
  if (value === null || value === undefined || value === false) return '';
  if (value instanceof Html) return value.text;
  if (Array.isArray(value)) return value.map(textOf).join('');
  return safe(String(value)).replace(/[&<>"']/g, character => entities[character]);
}

const entities: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
