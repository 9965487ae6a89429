import { type Paint, paintOf, type Style } from './style';
import { indent, wrap } from './wrap';

/** A page of Markdown as our rules write it (headings, paragraphs, lists, code, emphasis) for a terminal. */
export function markdownText(page: string, style: Style): string {
  const paint = paintOf(style);
  const blocks = blocksOf(page);
  return `${blocks.map(block => blockLines(block, style, paint).join('\n')).join('\n\n')}\n`;
}

/** Code may have empty lines in it; everywhere else they are between blocks. */
const blocksOf = (page: string): string[] =>
  page
    .split(/^(```[\s\S]*?^```)$/m)
    .flatMap(part => (part.startsWith('```') ? [part] : part.split(/\n{2,}/)))
    .map(block => block.replace(/^\n+|\n+$/g, ''))
    .filter(Boolean);

function blockLines(block: string, style: Style, paint: Paint): string[] {
  const heading = /^(#+) (.*)$/.exec(block);
  if (heading) return [paint.bold(plain(heading[2]))];
  if (block.startsWith('```')) return indent(block.split('\n').slice(1, -1), 2);
  if (ITEM.test(block)) return block.split(NEXT_ITEM).flatMap(item => itemLines(item, style));
  return wrap(plain(block), style.width);
}

const ITEM = /^(?:[-*]|\d+[.)]) /;
const NEXT_ITEM = /\n(?=(?:[-*]|\d+[.)]) )/;

/** An item under its mark: a stroke, or its number. */
function itemLines(item: string, { width }: Style): string[] {
  const [mark] = ITEM.exec(item)!;
  const shown = /\d/.test(mark) ? mark : '- ';
  return wrap(`${shown}${plain(item.slice(mark.length))}`, width, shown.length);
}

/**
 * Emphasis says nothing that the words do not; a link is its text, and its address in brackets if it leads out. Code
 * keeps its marks, or a sentence about it would break; what stands in quotes needs no more.
 */
const plain = (text: string) =>
  text
    .replace(/\n\s*/g, ' ')
    .replace(/\[([^\]]+)\]\(([^)]+)\)/g, (_, words, to) => (/^https?:/.test(to) ? `${words} (${to})` : words))
    .replace(/\*\*([^*]+)\*\*/g, '$1')
    .replace(/`("[^`"]*")`/g, '$1');
