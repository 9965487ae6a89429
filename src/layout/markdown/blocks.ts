// no-unit-test: test/layout/markdown/spec.test.ts runs every example of the specification through it
import { parser, Table } from '@lezer/markdown';
import { Mapped } from '../mapped';

export interface Range {
  from: number;
  to: number;
}

export interface Blocks {
  /** Text in which images can stand: paragraphs, headings, cells; without the marks of quotations. */
  inline: Mapped[];
  /** Ranges of raw HTML. */
  html: Range[];
  definitions: { label: string; destination: Range }[];
}

/** Block structure alone: what stands inside the blocks is read by `inlineParts`. */
const blockParser = parser.configure([
  Table,
  {
    remove: [
      'Escape',
      'Entity',
      'InlineCode',
      'HTMLTag',
      'Emphasis',
      'HardBreak',
      'Link',
      'Image',
      'LinkEnd',
      'Autolink',
    ],
  },
]);

const INLINE = /^(?:Paragraph|ATXHeading\d|SetextHeading\d|TableCell)$/;
const HTML = /^(?:HTMLBlock|CommentBlock|ProcessingInstructionBlock)$/;
const MARK = /^(?:QuoteMark|HeaderMark|ListMark)$/;
/** A dozen quotations and lists opened in one line: nobody writes it, and it takes the parser quadratic time. */
const TOWER = /^(?:[ \t]*(?:[-+*>]|\d{1,9}[.)])){12}.*$/gm;

/** @param text with LF as line end */
export function blocksOf(text: string): Blocks {
  const blocks: Blocks = { inline: [], html: [], definitions: [] };
  const tree = blockParser.parse(text.replace(TOWER, line => ' '.repeat(line.length)));
  tree.iterate({
    enter: ({ name, from, to, node }) => {
      const between = () => {
        const marks = [];
        for (let child = node.firstChild; child; child = child.nextSibling)
          if (MARK.test(child.name)) marks.push(child);
        return gaps(from, to, marks);
      };
      if (INLINE.test(name)) blocks.inline.push(joined(text, between()));
      else if (HTML.test(name)) blocks.html.push(...between());
      else if (name === 'LinkReference') {
        const label = node.getChild('LinkLabel');
        const url = node.getChild('URL');
        if (!label || !url) return false;
        const written = text.slice(label.from + 1, label.to - 1);
        // a footnote with one word is no definition
        if (written.startsWith('^')) blocks.inline.push(Mapped.of(text, label.to, to));
        else {
          const angle = text[url.from] === '<' ? 1 : 0;
          const destination = { from: url.from + angle, to: url.to - angle };
          blocks.definitions.push({ label: written, destination });
        }
      } else return true;
      return name === 'LinkReference' ? false : undefined;
    },
  });
  return blocks;
}

function gaps(from: number, to: number, marks: readonly Range[]): Range[] {
  const ends = [from, ...marks.map(mark => mark.to)];
  const starts = [...marks.map(mark => mark.from), to];
  return ends.map((end, i) => ({ from: end, to: starts[i] })).filter(range => range.to > range.from);
}

function joined(text: string, ranges: readonly Range[]): Mapped {
  if (ranges.length === 1) return Mapped.of(text, ranges[0].from, ranges[0].to);
  return Mapped.build(add => {
    for (const { from, to } of ranges) add(text.slice(from, to), from, to);
  });
}
