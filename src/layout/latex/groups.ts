// no-unit-test: test/layout/latex/index.test.ts reads texts by it
/** A stretch inside its brackets. */
export interface Group {
  from: number;
  to: number;
}

const SPACE = /\s*/y;

/** Finds the arguments of macros in a live text. */
export class Groups {
  /** Place of the brace that closes one, by the place of the one that opens. */
  private readonly closing = new Map<number, number>();

  constructor(readonly text: string) {
    const open: number[] = [];
    for (const { index, 0: token } of text.matchAll(/\\[\s\S]|[{}]/g))
      if (token === '{') open.push(index);
      else if (token === '}' && open.length) this.closing.set(open.pop()!, index);
  }

  skip(at: number): number {
    SPACE.lastIndex = at;
    SPACE.test(this.text);
    return SPACE.lastIndex;
  }

  /** `{...}`, spaces before it allowed. */
  braces(at: number): Group | null {
    const open = this.skip(at);
    const close = this.text[open] === '{' ? this.closing.get(open) : undefined;
    return close === undefined ? null : { from: open + 1, to: close };
  }

  /** `[...]`; brackets in braces do not count, and options hold no other ones. */
  brackets(at: number): Group | null {
    const open = this.skip(at);
    if (this.text[open] !== '[') return null;
    for (let i = open + 1; i < this.text.length && i - open < LONGEST; i++) {
      const character = this.text[i];
      if (character === ']') return { from: open + 1, to: i };
      if (character === '[') return null;
      if (character === '\\') i++;
      else if (character === '{') {
        const close = this.closing.get(i);
        if (close === undefined) return null;
        i = close;
      }
    }
    return null;
  }

  /** `key=value` pairs of options, in their order; braces round a value taken off. */
  options({ from, to }: Group): [key: string, value: string][] {
    const parts: string[] = [];
    let start = from;
    for (let i = from; i < to; i++) {
      if (this.text[i] === '{') i = this.closing.get(i) ?? to;
      else if (this.text[i] === ',') {
        parts.push(this.text.slice(start, i));
        start = i + 1;
      }
    }
    parts.push(this.text.slice(start, to));
    return parts.map(part => {
      const equals = part.indexOf('=');
      const value = equals === -1 ? '' : part.slice(equals + 1).trim();
      return [
        (equals === -1 ? part : part.slice(0, equals)).trim(),
        /^\{[^{}]*\}$/.test(value) ? value.slice(1, -1).trim() : value,
      ];
    });
  }
}

/** Longer options are a bracket that nobody closed. */
const LONGEST = 4000;
