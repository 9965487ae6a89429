// no-unit-test: test/layout/html/index.test.ts reads pages by it
import { QuoteType, Tokenizer, type TokenizerCallbacks } from 'htmlparser2';
import { Mapped } from '../mapped';
import type { Writing } from '../types';

export interface Attribute {
  /** Entities undone. */
  value: Mapped;
  writing: Writing;
}

export interface Tag {
  /** In small letters. */
  name: string;
  closes: boolean;
  attributes: ReadonlyMap<string, Attribute>;
  /** What stands in it as it is, for a `style`; else null. */
  content: Mapped | null;
}

const WRITING: Partial<Record<QuoteType, Writing>> = {
  [QuoteType.Double]: 'html-double',
  [QuoteType.Single]: 'html-single',
};

/** Every tag of an HTML text in order, those in comments and scripts left out. Never throws; linear time. */
export function tagsOf(html: string): Tag[] {
  const tags: Tag[] = [];
  let attributes = new Map<string, Attribute>();
  let name = '';
  let attribute = '';
  let pieces: Piece[] = [];
  const opened = () => {
    tags.push({ name, closes: false, attributes, content: null });
  };
  const callbacks: TokenizerCallbacks = {
    onopentagname: (start, end) => {
      name = html.slice(start, end).toLowerCase();
      attributes = new Map();
    },
    onattribname: (start, end) => {
      attribute = html.slice(start, end).toLowerCase();
      pieces = [];
    },
    onattribdata: (start, end) => {
      pieces.push({ text: html.slice(start, end), start, end });
    },
    onattribentity: code => {
      pieces.push({ text: String.fromCodePoint(code), start: null, end: null });
    },
    onattribend: (quote, end) => {
      // of two of one name the first counts
      if (!attributes.has(attribute))
        attributes.set(attribute, {
          value: joined(html, pieces, end),
          writing: WRITING[quote] ?? 'html-bare',
        });
    },
    onopentagend: opened,
    onselfclosingtag: opened,
    onclosetag: (start, end) => {
      name = html.slice(start, end).toLowerCase();
      tags.push({ name, closes: true, attributes: new Map(), content: null });
    },
    ontext: (start, end) => {
      const last = tags.at(-1);
      if (last?.name !== 'style' || last.closes) return;
      last.content = Mapped.of(html, last.content?.start ?? start, end);
    },
    ontextentity: () => {},
    oncdata: () => {},
    oncomment: () => {},
    ondeclaration: () => {},
    onprocessinginstruction: () => {},
    onend: () => {},
  };
  const tokenizer = new Tokenizer({ decodeEntities: true }, callbacks);
  tokenizer.write(html);
  tokenizer.end();
  return tags;
}

/** A stretch as it is, or a character of an entity, whose place follows from its neighbours. */
interface Piece {
  text: string;
  start: number | null;
  end: number | null;
}

function joined(source: string, pieces: readonly Piece[], end: number): Mapped {
  const [only] = pieces;
  if (pieces.length === 1 && only.start !== null) return Mapped.of(source, only.start, only.end!);
  const after: number[] = [];
  for (let i = pieces.length - 1, next = end; i >= 0; i--) {
    after[i] = next;
    next = pieces[i].start ?? next;
  }
  return Mapped.build(add => {
    let at = pieces[0]?.start ?? end;
    for (const [i, piece] of pieces.entries()) {
      const start = piece.start ?? at;
      at = piece.end ?? after[i];
      add(piece.text, start, at);
    }
  });
}
