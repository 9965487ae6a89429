import { decodeHTMLStrict } from 'entities';
import { htmlText } from '../html';
import { lengthOf, units } from '../length';
import { Mapped } from '../mapped';
import { type Draft, urlDraft, weakDrafts } from '../reference';
import type { LayoutSize, Writing } from '../types';
import { attributesAt } from './attributes';
import { blocksOf, type Range } from './blocks';
import { inlineParts } from './inline';
import { normalLabel } from './link-parts';

const FRONT_MATTER = /^\uFEFF?---[ \t]*\r?\n(?:[^\n]*\n)*?(?:---|\.\.\.)[ \t]*(?:\r?\n|$)/;

/** The pictures of a Markdown text: CommonMark with tables, front matter, attributes in braces and inline HTML. */
export function markdownDrafts(source: string, textWidth?: number): Draft[] {
  const front = FRONT_MATTER.exec(source)?.[0] ?? '';
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
  for (const inline of blocks.inline) {
    const parts = inlineParts(inline, label => definitions.has(normalLabel(label)));
    for (const { from, to } of parts.html) {
      const piece = inline.slice(from, to);
      html.push({ from: piece.start, to: piece.end });
    }
    for (const { destination, label, from, to } of parts.images) {
      const size = sizeOf(attributesAt(inline.text, to), textWidth);
      const range = destination ? null : definitions.get(normalLabel(label))!;
      const written = range
        ? Mapped.of(text, range.from, range.to)
        : inline.slice(destination!.from, destination!.to);
      const draft = urlDraft(unescaped(written), [writingOf(text, written)], size);
      if (draft) drafts.push(range ? { ...draft, placed: inline.slice(from, to).start } : draft);
    }
  }
  return [...drafts, ...htmlText(onlyHtml(text, html), textWidth).drafts];
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

function sizeOf(attributes: Record<string, string>, textWidth?: number): LayoutSize | null {
  const edge = (text: string | undefined, whole?: number) =>
    text === undefined ? undefined : lengthOf(text, units.web, { whole, bare: 'px' });
  const [width, height] = [edge(attributes.width, textWidth), edge(attributes.height)];
  return width || height ? { ...(width && { width }), ...(height && { height }) } : null;
}
