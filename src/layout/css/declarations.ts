// no-unit-test: test/layout/css/index.test.ts reads style sheets by it
import { type CSSToken, TokenType, tokenize } from '@csstools/css-tokenizer';

/** `name: value` with the value's tokens, split at its commas. */
export interface Declaration {
  name: string;
  layers: CSSToken[][];
}

export class Block {
  readonly declarations: Declaration[] = [];
  /** It holds in print for what its prelude selects. Rules inside rules are not followed. */
  readonly holds: boolean;
  private readonly holdsInside: boolean;
  private byName: Map<string, Declaration> | null = null;

  /** `prelude`: what stands before its brace, selectors or an at-rule; nothing for declarations that stand alone. */
  constructor(
    readonly prelude: readonly CSSToken[],
    within: Block | null,
  ) {
    this.holds = within?.holdsInside ?? true;
    this.holdsInside = this.holds && (within === null || holdsInPrint(prelude));
  }

  /** The last declaration of a name is the one that counts. Asked once the block is read. */
  said(name: string): Declaration | undefined {
    this.byName ??= new Map(this.declarations.map(declaration => [declaration.name, declaration]));
    return this.byName.get(name);
  }
}

const OPENS: Partial<Record<TokenType, true>> = {
  [TokenType.Function]: true,
  [TokenType.OpenParen]: true,
  [TokenType.OpenSquare]: true,
};
const CLOSES: Partial<Record<TokenType, true>> = {
  [TokenType.CloseParen]: true,
  [TokenType.CloseSquare]: true,
};

/**
 * The blocks of a style sheet, or of declarations alone (a style attribute), inner ones first. Broken input gives what
 * can be made of it. Takes linear time.
 */
export function blocksOf(css: string): Block[] {
  const blocks: Block[] = [];
  const open: Block[] = [new Block([], null)];
  let pending: CSSToken[] = [];
  let depth = 0;
  const end = () => {
    const declaration = declarationOf(pending);
    if (declaration) open.at(-1)!.declarations.push(declaration);
    pending = [];
    depth = 0;
  };
  for (const token of tokenize({ css }, { onParseError: () => {} })) {
    const [type] = token;
    if (type === TokenType.Comment) continue;
    if (OPENS[type]) depth++;
    else if (CLOSES[type]) depth = Math.max(0, depth - 1);
    if (type === TokenType.OpenCurly) {
      open.push(new Block(pending, open.at(-1)!));
      pending = [];
      depth = 0;
    } else if (type === TokenType.CloseCurly) {
      end();
      if (open.length > 1) blocks.push(open.pop()!);
    } else if ((type === TokenType.Semicolon && depth === 0) || type === TokenType.EOF) end();
    else pending.push(token);
  }
  return [...blocks, ...open.reverse()];
}

/** Null for what is no declaration: a selector, a rule like `@import`. */
function declarationOf(tokens: readonly CSSToken[]): Declaration | null {
  const solid = tokens.filter(([type]) => type !== TokenType.Whitespace);
  const [name, colon, ...value] = solid;
  if (name?.[0] !== TokenType.Ident || colon?.[0] !== TokenType.Colon) return null;
  const layers: CSSToken[][] = [[]];
  let depth = 0;
  for (const token of value) {
    if (OPENS[token[0]]) depth++;
    else if (CLOSES[token[0]]) depth--;
    if (token[0] === TokenType.Comma && depth === 0) layers.push([]);
    else layers.at(-1)!.push(token);
  }
  return { name: name[4].value.toLowerCase(), layers };
}

/** What is inside of an at-rule counts for a printed page; nobody knows that of conditions such as a width. */
function holdsInPrint(prelude: readonly CSSToken[]): boolean {
  const name = atRuleOf({ prelude });
  if (name !== 'media') return name === 'layer' || name === 'supports';
  const words = prelude.flatMap(token => (token[0] === TokenType.Ident ? token[4].value.toLowerCase() : []));
  return !words.includes('not') && (words.includes('print') || words.includes('all'));
}

/** The at-rule that a prelude begins with, such as `page`; null for selectors. */
export const atRuleOf = ({ prelude }: Pick<Block, 'prelude'>): string | null => {
  const first = prelude.find(([type]) => type !== TokenType.Whitespace);
  return first?.[0] === TokenType.AtKeyword ? first[4].value.toLowerCase() : null;
};
