import { cssDrafts, styledSize } from '../css';
import { lengthOf, units } from '../length';
import { type Draft, urlDraft } from '../reference';
import type { LayoutSize } from '../types';
import { srcsetUrls } from './srcset';
import { type Attribute, type Tag, tagsOf } from './tags';

/** Attributes that hold one picture. */
const PICTURES: Record<string, readonly string[]> = {
  img: ['src'],
  image: ['href', 'xlink:href'],
  input: ['src'],
  video: ['poster'],
  object: ['data'],
  embed: ['src'],
  body: ['background'],
  table: ['background'],
  td: ['background'],
  th: ['background'],
};
/** Those with sets of pictures. */
const SETS = new Set(['img', 'source']);
/** Whose `src`, `data` can be anything. */
const ANYTHING = new Set(['input', 'object', 'embed']);

/** The pictures of an HTML text. `textWidth`: mm that shares of the width are of. */
export function htmlDrafts(html: string, textWidth?: number): Draft[] {
  const drafts: Draft[] = [];
  let base = '';
  let cells = 0;
  for (const tag of tagsOf(html)) {
    const { name, attributes } = tag;
    if (name === 'td' || name === 'th') cells = Math.max(0, cells + (tag.closes ? -1 : 1));
    if (tag.closes) continue;
    if (name === 'base') base ||= attributes.get('href')?.value.text.replace(/[^/]*$/, '') ?? '';
    // how wide a column of a table is, nobody knows
    drafts.push(...picturesOf(tag, cells ? undefined : textWidth));
  }
  return base ? drafts.map(draft => ({ ...draft, before: base })) : drafts;
}

function picturesOf({ name, attributes, content }: Tag, textWidth: number | undefined): Draft[] {
  const size = name === 'image' ? null : sizeOf(attributes, textWidth);
  const certain = !ANYTHING.has(name);
  const single = (PICTURES[name] ?? []).flatMap(key => {
    const { value, writing } = attributes.get(key) ?? {};
    return (value && urlDraft(value, [writing!], size, { certain })) ?? [];
  });
  const { value: set, writing } = (SETS.has(name) && attributes.get('srcset')) || {};
  const several = set ? srcsetUrls(set).flatMap(url => urlDraft(url, ['srcset', writing!], size) ?? []) : [];
  const style = attributes.get('style');
  const styled = style ? cssDrafts(style.value, [style.writing]) : [];
  return [...single, ...several, ...styled, ...(content ? cssDrafts(content) : [])];
}

/** A style goes before the attributes. */
function sizeOf(attributes: ReadonlyMap<string, Attribute>, textWidth?: number): LayoutSize | null {
  const edge = (key: string, whole?: number) => {
    const text = attributes.get(key)?.value.text;
    return text === undefined ? undefined : lengthOf(text, units.web, { whole, bare: 'px' });
  };
  const style = attributes.get('style');
  const styled = style ? styledSize(style.value.text, textWidth) : null;
  if (styled) return styled;
  const [width, height] = [edge('width', textWidth), edge('height')];
  return width || height ? { ...(width && { width }), ...(height && { height }) } : null;
}
