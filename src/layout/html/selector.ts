// no-unit-test: test/layout/html/cascade.test.ts selects by it
import { type CSSToken, TokenType } from '@csstools/css-tokenizer';

export interface Element {
  name: string;
  id: string;
  classes: readonly string[];
  parent: Element | null;
}

interface Compound {
  name: string | null;
  ids: string[];
  classes: string[];
  /** What stands before it is its parent, not just any ancestor. */
  child: boolean;
}

export interface Selector {
  compounds: Compound[];
  /** Ids count more than classes, classes more than names (Selectors 4, 17). */
  weight: number;
}

/** Further up nobody looks, and longer selectors nobody writes. */
const DEEPEST = 40;
const LONGEST = 8;

/**
 * The selectors of a rule, of names, classes, ids, descendants and children. Those with more in them are left out:
 * whether they hold cannot be told from a text alone, or not simply.
 */
export function selectorsOf(prelude: readonly CSSToken[]): Selector[] {
  const selectors: Selector[] = [];
  let part: CSSToken[] = [];
  const end = () => {
    const selector = selectorOf(part);
    if (selector) selectors.push(selector);
    part = [];
  };
  for (const token of prelude)
    if (token[0] === TokenType.Comma) end();
    else part.push(token);
  end();
  return selectors;
}

function selectorOf(tokens: readonly CSSToken[]): Selector | null {
  const compounds: Compound[] = [];
  let open: Compound | null = null;
  let child = false;
  let dot = false;
  for (const token of tokens) {
    const [type] = token;
    const sign = type === TokenType.Delim ? token[4].value : '';
    if (type === TokenType.Whitespace || sign === '>') {
      child ||= sign === '>';
      open = null;
      continue;
    }
    if (!open) {
      open = { name: null, ids: [], classes: [], child };
      child = false;
      compounds.push(open);
    }
    if (type === TokenType.Ident) {
      if (dot) open.classes.push(token[4].value);
      else open.name = token[4].value.toLowerCase();
      dot = false;
    } else if (type === TokenType.Hash) open.ids.push(token[4].value);
    else if (sign === '.') dot = true;
    else if (sign !== '*') return null;
  }
  if (!compounds.length || compounds.length > LONGEST || dot || child) return null;
  const weight = compounds.reduce(
    (sum, { name, ids, classes }) => sum + ids.length * 1e6 + classes.length * 1e3 + (name ? 1 : 0),
    0,
  );
  return { compounds, weight };
}

/** Whether a selector holds for an element; from the element upward, all that can stand for a part at once. */
export function selects({ compounds }: Selector, element: Element): boolean {
  let at = [element];
  for (let part = compounds.length - 1; part >= 0; part--) {
    at = at.filter(one => isOf(compounds[part], one));
    if (!at.length || part === 0) break;
    at = compounds[part].child ? at.flatMap(({ parent }) => parent ?? []) : ancestors(at[0]);
  }
  return at.length > 0;
}

const isOf = ({ name, ids, classes }: Compound, element: Element): boolean =>
  (name === null || name === element.name) &&
  ids.every(id => id === element.id) &&
  classes.every(one => element.classes.includes(one));

/** The nearest first: those of the nearest are those of all. */
function ancestors({ parent }: Element): Element[] {
  const above: Element[] = [];
  for (let one = parent; one && above.length < DEEPEST; one = one.parent) above.push(one);
  return above;
}
