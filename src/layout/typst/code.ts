// no-unit-test: test/layout/typst/index.test.ts reads texts by it
import { constantAt, type Definition, definitionAt, listAt } from './definitions';

/** A string without its quotes, or another stretch of the text. */
export interface StringLiteral {
  from: number;
  to: number;
}

/** A function call that has been read to its end. */
export interface Call {
  name: string;
  /** In a set rule. */
  setting: boolean;
  /** Where its bracket opens. */
  at: number;
  /** The arguments without a name: where each stands. */
  positional: readonly StringLiteral[];
  /** Named arguments as written; long ones are left out. */
  named: ReadonlyMap<string, string>;
  /** The same: where the value of each stands. */
  values: ReadonlyMap<string, StringLiteral>;
  /** The function in whose body it stands. */
  within: Definition | null;
  /** Set rules for `image` that hold here. */
  defaults: ReadonlyMap<string, string>;
  /** The calls in whose arguments it stands, innermost first. */
  around: Call | null;
}

export interface Visitor {
  string(literal: StringLiteral): void;
  call(call: Call): void;
  /** A name that stands for a string. */
  constant(name: string, literal: StringLiteral): void;
  /** A name that goes through a list. */
  list(name: string, items: readonly StringLiteral[]): void;
  /** Another file is taken in here, or only its names. */
  file(literal: StringLiteral, how: 'include' | 'import'): void;
}

interface Context {
  mode: 'markup' | 'code';
  /** What ends it: a bracket, the end of the line, or the end of an expression behind a hash. */
  ends: ']' | ')' | '}' | 'line' | 'expression';
  call: OpenCall | null;
  /** The call that it is an argument of, behind the brackets: `#box(width: 50%)[...]`. */
  content: Call | null;
  /** The keyword that a line begins with. */
  keyword: string;
  defaults: ReadonlyMap<string, string>;
  /** The function whose body is read, and that round the context. */
  within: Definition | null;
  outside: Definition | null;
}

interface OpenCall extends Call {
  positional: StringLiteral[];
  named: Map<string, string>;
  values: Map<string, StringLiteral>;
  /** Where the argument begins that is read. */
  argument: number;
}

const KEYWORDS = new Set(
  'let set show import include if else for while context return break continue'.split(' '),
);
const IDENTIFIER = /[\p{L}_][\p{L}\p{N}_-]*/uy;
const NAMED = /^([\p{L}_][\p{L}\p{N}_-]*)\s*:(?!=)\s*/u;
/** What an expression behind a hash begins with, and what it goes on with. */
const BEGINS = /[\p{L}\p{N}_([{"]/u;
const CONTINUES = /[\p{L}\p{N}_.([]/u;
const NO_ARGUMENTS = {
  ...{ setting: false, at: 0, positional: [], named: new Map(), values: new Map() },
  ...{ defaults: new Map(), within: null },
};
/** What a set rule for `image` can say of its size. */
const SIZES = new Set(['width', 'height', 'fit']);
/** Longer arguments are no width. */
const LONGEST = 300;
/** Nobody gives a function more. */
const MOST_ARGUMENTS = 10;

/**
 * Walks through a Typst text: markup in which code stands behind hashes, code in which markup stands in brackets.
 * Comments and raw text are passed over. Broken text is read as far as it goes; linear time.
 */
export function walk(text: string, visitor: Visitor): void {
  const none: ReadonlyMap<string, string> = new Map();
  const stack: Context[] = [
    {
      ...{ mode: 'markup', ends: ']', call: null, content: null, keyword: '', defaults: none },
      ...{ within: null, outside: null },
    },
  ];
  let at = 0;
  /** The identifier that ends at `at`: a bracket there calls it. */
  let callee = '';
  /** The call whose bracket was closed just before `at`. */
  let closed: Call | null = null;
  /** The keyword that ends at `at`, spaces aside. */
  let keyword = '';

  const top = () => stack[stack.length - 1];
  const push = (mode: Context['mode'], ends: Context['ends'], call: OpenCall | null = null, keyword = '') =>
    stack.push({
      ...{ mode, ends, call, content: null, keyword, defaults: top().defaults },
      ...{ within: top().within, outside: top().within },
    });

  const identifierAt = (from: number): string => {
    IDENTIFIER.lastIndex = from;
    return IDENTIFIER.exec(text)?.[0] ?? '';
  };

  /** Behind a comment or raw text, or `at` where there is none. */
  const passed = (): number => {
    const two = text.slice(at, at + 2);
    if (two === '//' && !(top().mode === 'markup' && text[at - 1] === ':')) {
      const end = text.indexOf('\n', at);
      return end === -1 ? text.length : end;
    }
    if (two === '/*') return behindComment(text, at);
    if (text[at] !== '`') return at;
    let run = at;
    while (text[run] === '`') run++;
    const ticks = run - at;
    if (ticks === 2) return run;
    const end = text.indexOf('`'.repeat(ticks), run);
    return end === -1 ? text.length : end + ticks;
  };

  const finishArgument = (call: OpenCall) => {
    const written = at - call.argument <= LONGEST ? text.slice(call.argument, at).trim() : '';
    const named = NAMED.exec(written);
    const span = { from: call.argument, to: at };
    if (named) {
      call.named.set(named[1], written.slice(named[0].length));
      call.values.set(named[1], {
        from: at - text.slice(span.from, at).trimStart().length + named[0].length,
        to: at,
      });
    } else if (call.positional.length < MOST_ARGUMENTS) call.positional.push(span);
    call.argument = at + 1;
  };

  /** What a keyword at an offset begins. */
  const begin = (word: string, from: number) => {
    keyword = word;
    if (word === 'let') {
      top().within = definitionAt(text, from) ?? top().outside;
      const constant = constantAt(text, from);
      if (constant) visitor.constant(constant.name, constant.literal);
    } else if (word === 'for') {
      const list = listAt(text, from);
      if (list) visitor.list(list.name, list.items);
    }
  };

  const close = (bracket: string) => {
    while (top().ends === 'line' || top().ends === 'expression') stack.pop();
    if (stack.length === 1 || top().ends !== bracket) return;
    const { call } = top();
    if (call) finishArgument(call);
    stack.pop();
    if (!call) return;
    visitor.call(call);
    closed = call;
    if (!call.setting || call.name !== 'image') return;
    // the rule holds to the end of the block that it stands in
    const block = top().ends === 'line' ? stack[stack.length - 2] : top();
    block.defaults = new Map([...block.defaults, ...call.named].filter(([name]) => SIZES.has(name)));
  };

  const markup = (character: string) => {
    closed = null;
    if (character === '\\') at += 2;
    else if (character === '#') {
      const name = identifierAt(at + 1);
      if (KEYWORDS.has(name)) {
        push('code', 'line', null, name);
        begin(name, at + 1);
        at += 1 + name.length;
      } else {
        push('code', 'expression');
        at++;
      }
      callee = '';
    } else {
      if (character === ']') close(']');
      at++;
    }
  };

  const code = (character: string) => {
    const name = identifierAt(at);
    if (name) {
      const context = top();
      if (context.ends === '}' || context.ends === 'line') {
        if (KEYWORDS.has(name) && name !== 'else') context.keyword = name;
      }
      callee = KEYWORDS.has(name) ? '' : name;
      keyword = '';
      if (!callee) begin(name, at);
      at += name.length;
      return;
    }
    const called = callee;
    const before = closed;
    callee = '';
    closed = null;
    if (!/\s|"/.test(character)) keyword = '';
    if (character === '"') {
      const end = behindString(text, at);
      const literal = { from: at + 1, to: end - 1 };
      if (keyword === 'include' || keyword === 'import') visitor.file(literal, keyword);
      else visitor.string(literal);
      keyword = '';
      at = end;
      return;
    }
    if (character === '(') {
      const around = callAround(stack);
      const setting = top().keyword === 'set';
      const { defaults, within } = top();
      const call = {
        ...{ name: called, at, setting, positional: [], named: new Map(), values: new Map() },
        ...{ defaults, within, around, argument: at + 1 },
      };
      push('code', ')', called && within?.bracket !== at ? call : null);
    } else if (character === '{') push('code', '}');
    else if (character === '[') {
      const around = callAround(stack);
      push('markup', ']');
      top().content = called ? { ...NO_ARGUMENTS, name: called, around } : before;
    } else if (character === ')' || character === '}') close(character);
    else if (character === ']') close(']');
    else if (character === ',' && top().call) finishArgument(top().call!);
    else if (character === '\n' || character === ';') {
      if (top().ends === 'line') stack.pop();
      else {
        top().keyword = '';
        top().within = top().outside;
      }
    }
    at++;
  };

  while (at < text.length) {
    const next = passed();
    if (next > at) {
      at = next;
      callee = '';
      continue;
    }
    const character = text[at];
    const context = top();
    const goesOn = text[at - 1] === '#' ? BEGINS : CONTINUES;
    if (context.ends === 'expression' && !goesOn.test(character)) stack.pop();
    else if (context.mode === 'markup') markup(character);
    else code(character);
  }
}

/** The innermost open call; a context without one is looked through, however many there are of them in one line. */
function callAround(stack: readonly Context[]): Call | null {
  for (let i = stack.length - 1; i >= Math.max(0, stack.length - 20); i--) {
    const around = stack[i].call ?? stack[i].content;
    if (around) return around;
  }
  return null;
}

function behindString(text: string, at: number): number {
  for (let i = at + 1; i < text.length; i++) {
    if (text[i] === '\\') i++;
    else if (text[i] === '"') return i + 1;
  }
  return text.length + 1;
}

/** Comments nest. */
function behindComment(text: string, at: number): number {
  const mark = /\/\*|\*\//g;
  mark.lastIndex = at;
  let depth = 0;
  for (let found = mark.exec(text); found; found = mark.exec(text)) {
    depth += found[0] === '/*' ? 1 : -1;
    if (depth === 0) return mark.lastIndex;
  }
  return text.length;
}
