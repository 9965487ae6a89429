// no-unit-test: test/layout/markdown/index.test.ts reads sizes by it
import { htmlText } from '../html';
import type { LayoutSize } from '../types';
import { attributesAt } from './attributes';

/** A length in attributes; anything else would be no length in HTML either. */
const LENGTH = /^[\d.]+([a-z]*|%)$/i;
const NAME = /^[\w-]+$/;

/**
 * The sizes of pictures, each by the attributes straight behind it in braces (`text` from `to`) and by style sheets: as
 * in the HTML that Markdown becomes, where each is an `img` in a paragraph.
 */
export function sizesOf(
  images: readonly { text: string; to: number }[],
  textWidth: number | undefined,
  sheets: readonly string[],
): (LayoutSize | null)[] {
  const page = images.map(({ text, to }) => `<p>${tagOf(attributesAt(text, to))}</p>`).join('');
  return htmlText(page, textWidth, sheets).drafts.map(({ size }) => size);
}

/** A length with a unit becomes a style, which goes before style sheets; one without becomes an attribute. */
function tagOf({ id = '', classes, lengths }: ReturnType<typeof attributesAt>): string {
  const all = Object.entries(lengths).filter(([, value]) => LENGTH.test(value));
  const [bare, withUnit] = [true, false].map(is => all.filter(([, value]) => /\d$/.test(value) === is));
  return [
    '<img src="x"',
    NAME.test(id) && `id="${id}"`,
    `class="${classes.filter(name => NAME.test(name)).join(' ')}"`,
    `style="${withUnit.map(([edge, value]) => `${edge}:${value}`).join(';')}"`,
    ...bare.map(([edge, value]) => `${edge}="${value}"`),
  ]
    .filter(Boolean)
    .join(' ')
    .concat('>');
}
