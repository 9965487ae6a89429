import type { CSSToken } from '@csstools/css-tokenizer';
import { type Block, blocksOf } from '../css/declarations';
import { type Element, type Selector, selectorsOf, selects } from './selector';

/** What matters for the size of a picture. */
const NAMES = ['width', 'height', 'inline-size', 'block-size', 'object-fit', 'display'] as const;
/** So often a rule is tried on an element: a page that asks for more was made to keep a machine busy. */
const PATIENCE = 1_000_000;

/** The first word of a property's value, if anything says it. */
export type Said = (name: (typeof NAMES)[number]) => CSSToken | undefined;

interface Rule {
  selector: Selector;
  block: Block;
}

/** The sizes that style sheets say of elements, in print. */
export class Cascade {
  /** The weaker first. */
  private readonly rules: Rule[];
  private patience = PATIENCE;

  constructor(sheets: readonly string[]) {
    this.rules = sheets
      .flatMap(sheet => blocksOf(sheet))
      .filter(block => block.holds && NAMES.some(name => block.said(name)))
      .flatMap(block => selectorsOf(block.prelude).map(selector => ({ selector, block })))
      .sort((x, y) => x.selector.weight - y.selector.weight);
  }

  /** What rules say of an element, and its own style above them all. */
  of(element: Element, style: string | undefined): Said {
    this.patience -= this.rules.length;
    if (this.patience < 0) return () => undefined;
    const blocks = this.rules.filter(({ selector }) => selects(selector, element)).map(({ block }) => block);
    const own = style ? blocksOf(style).slice(-1) : [];
    const strongest = [...blocks, ...own].reverse();
    return name => {
      for (const block of strongest) {
        const declaration = block.said(name);
        if (declaration) return declaration.layers[0][0];
      }
      return undefined;
    };
  }
}
