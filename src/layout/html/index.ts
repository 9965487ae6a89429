import { cssDrafts } from '../css';
import { type Draft, percentDecoded, urlDraft } from '../reference';
import type { LayoutSize } from '../types';
import { Cascade } from './cascade';
import { Page } from './page';
import { srcsetUrls } from './srcset';
import { type Tag, tagsOf } from './tags';

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

export interface HtmlText {
  drafts: Draft[];
  /** Style sheets that the page links, as written. */
  styles: string[];
}

/**
 * The pictures of an HTML text. `textWidth`: mm that shares of the width are of; `sheets`: texts of its linked style
 * sheets, which say sizes too.
 */
export function htmlText(html: string, textWidth?: number, sheets: readonly string[] = []): HtmlText {
  const tags = tagsOf(html);
  const own = tags.flatMap(({ content }) => content?.text ?? []);
  const page = new Page(new Cascade([...sheets, ...own]), textWidth);
  const drafts: Draft[] = [];
  const styles: string[] = [];
  let base = '';
  for (const tag of tags) {
    const { name, attributes } = tag;
    if (tag.closes) {
      page.close(name);
      continue;
    }
    const textOf = (key: string) => attributes.get(key)?.value.text ?? '';
    if (name === 'base') base ||= textOf('href').replace(/[^/]*$/, '');
    if (name === 'link' && /\bstylesheet\b/i.test(textOf('rel')) && !/\bscreen\b/i.test(textOf('media')))
      styles.push(percentDecoded(textOf('href')));
    drafts.push(...picturesOf(tag, page.open(tag)));
  }
  return { drafts: base ? drafts.map(draft => ({ ...draft, before: base })) : drafts, styles };
}

function picturesOf({ name, attributes, content }: Tag, size: LayoutSize | null): Draft[] {
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
