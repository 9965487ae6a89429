// no-unit-test: test/layout/*/index.test.ts and test/layout/hostile.test.ts read through it
import { asciidocText } from './asciidoc';
import { cssDrafts } from './css';
import { htmlText } from './html';
import { latexText } from './latex';
import { lineFinder } from './lines';
import { Mapped } from './mapped';
import { markdownText } from './markdown';
import type { Draft } from './reference';
import type { Inherited, LayoutKind, Reference, Source } from './types';
import { typstText } from './typst';

export interface ParseOptions {
  /** Width of the text in mm, where the settings say it: goes before what a source says of itself. */
  textWidth?: number;
  /** What the source that includes this one hands on. */
  inherited?: Inherited;
}

/**
 * Reads a layout source. Pure, in linear time, and never throws: of broken text it takes what can be made out. A byte
 * order mark and any line ends may stand in `text`; offsets count them.
 */
export function parseLayout(text: string, kind: LayoutKind, options: ParseOptions = {}): Source {
  const { drafts, ...rest } = read(text, kind, options);
  const lineOf = lineFinder(text);
  const references = drafts
    .filter(({ path }) => path !== '')
    .map(draft => ({ ...draft, ...lineOf(draft.start) }))
    .sort((x, y) => x.start - y.start || x.end - y.end);
  const unread = [...new Set(rest.unread?.map(offset => lineOf(offset).line))];
  return { includes: [], styles: [], isMain: false, passesOn: {}, ...rest, references, unread };
}

/** Every picture that a layout source places, in the order of the text. */
export const references = (text: string, kind: LayoutKind, options?: ParseOptions): Reference[] =>
  parseLayout(text, kind, options).references;

type Read = { drafts: Draft[] } & Partial<Omit<Source, 'references'>>;

function read(text: string, kind: LayoutKind, { textWidth, inherited }: ParseOptions): Read {
  const width = textWidth ?? inherited?.textWidth;
  switch (kind) {
    case 'markdown':
      return markdownText(text, width, inherited?.styles);
    case 'html':
      return htmlText(text, width, inherited?.styles);
    case 'css':
      return { drafts: cssDrafts(Mapped.of(text)) };
    case 'latex':
      return latexText(text, inherited, textWidth);
    case 'typst':
      return typstText(text, inherited, textWidth);
    case 'asciidoc':
      return asciidocText(text, inherited, width);
  }
}
