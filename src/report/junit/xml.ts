import { safe } from '../text/style';

/**
 * Text as XML 1.0 can hold it (section 2.2 Char, 2.4): control characters, which it cannot, are written out; what is no
 * Unicode becomes U+FFFD. Safe in elements and in attributes with double quotes.
 */
const escaped = (text: string): string =>
  safe(Buffer.from(text).toString())
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/[&<>"]/g, character => entities[character]);

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

type Attributes = Record<string, string | number>;

/** An element of text, whose lines are kept, or of other elements, each beginning a line. */
export function element(
  name: string,
  attributes: Attributes,
  content: readonly string[] | Text = [],
): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(String(value))}"`);
  const open = `${name}${written.join('')}`;
  if (content instanceof Text) return `<${open}>${content.lines.map(escaped).join('\n')}</${name}>`;
  return content.length ? `<${open}>\n${content.join('\n')}\n</${name}>` : `<${open}/>`;
}

/** Text of an element, by lines. */
export class Text {
  constructor(readonly lines: readonly string[]) {}
}
