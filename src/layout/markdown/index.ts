import { decodeHTMLStrict } from 'entities';
import { type HtmlText, htmlText } from '../html';
import { Mapped } from '../mapped';
import { type Draft, urlDraft, weakDrafts } from '../reference';
import type { Writing } from '../types';
import { blocksOf, type Range } from './blocks';
import { frontMatterOf, stylesIn } from './front-matter';
import { inlineParts } from './inline';
import { normalLabel } from './link-parts';
import { sizesOf } from './sizes';

/**
 * The pictures of a Markdown text: CommonMark with tables, front matter, attributes in braces and inline HTML. `sheets`:
 * texts of the style sheets that it names, which say sizes too.
 */
export function markdownText(source: string, textWidth?: number, sheets: readonly string[] = []): HtmlText {
  const front = frontMatterOf(source);
  const text = (blank(front) + source.slice(front.length))
    .replace(/^\uFEFF/, ' ')
    .replace(/\r\n/g, ' \n')
    .replace(/\r/g, '\n');
  const blocks = blocksOf(text);
  const definitions = new Map<string, Range>();
  for (const { label, destination } of blocks.definitions) {
    const name = normalLabel(label);
    if (!definitions.has(name)) definitions.set(name, destination);
  }
  const drafts = weakDrafts(Mapped.of(source, 0, front.length), []);
  const html = [...blocks.html];
  const images: { draft: Draft | null; text: string; to: number }[] = [];
  for (const inline of blocks.inline) {
    const parts = inlineParts(inline, label => definitions.has(normalLabel(label)));
    for (const { from, to } of parts.html) {
      const piece = inline.slice(from, to);
      html.push({ from: piece.start, to: piece.end });
    }
    for (const { destination, label, from, to } of parts.images) {
      const range = destination ? null : definitions.get(normalLabel(label))!;
      const written = range
        ? Mapped.of(text, range.from, range.to)
        : inline.slice(destination!.from, destination!.to);
      const draft = urlDraft(unescaped(written), [writingOf(text, written)], null);
      const placed = range && { placed: inline.slice(from, to).start };
      images.push({ draft: draft && { ...draft, ...placed }, text: inline.text, to });
    }
  }
  const sizes = sizesOf(images, textWidth, sheets);
  const raw = htmlText(onlyHtml(text, html), textWidth, sheets);
  return {
    drafts: [
      ...drafts,
      ...images.flatMap(({ draft }, i) => (draft ? { ...draft, size: sizes[i] } : [])),
      ...raw.drafts,
    ],
    styles: [...stylesIn(front), ...raw.styles],
  };
}

const blank = (text: string) => text.replace(/[^\r\n]/g, ' ');

const writingOf = (text: string, written: Mapped): Writing =>
  text[written.start - 1] === '<' ? 'markdown-angle' : 'markdown-bare';

/** Backslashes before punctuation, and entities. */
function unescaped(written: Mapped): Mapped {
  const { text } = written;
  if (!/[\\&]/.test(text)) return written;
  return Mapped.build(add => {
    for (const { index, 0: token } of text.matchAll(/\\[!-/:-@[-`{-~]|&#?\w{1,32};|[\s\S]/g)) {
      const meant = token.length === 1 ? token : token[0] === '\\' ? token[1] : decodeHTMLStrict(token);
      add(meant, written.startAt(index), written.slice(index, index + token.length).end);
    }
  });
}

/** Everything but raw HTML made blank, so that tags stand where they stood. */
function onlyHtml(text: string, ranges: Range[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const { from, to } of ranges.toSorted((x, y) => x.from - y.from)) {
    if (from < at) continue;
    parts.push(' '.repeat(from - at), text.slice(from, to));
    at = to;
  }
  return parts.join('');
}
