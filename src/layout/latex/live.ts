// no-unit-test: test/layout/latex/index.test.ts reads texts by it
/** Environments whose text is printed as it stands, or not at all. */
const VERBATIM = new Set(
  'verbatim verbatim* Verbatim BVerbatim LVerbatim lstlisting minted comment filecontents filecontents*'.split(
    ' ',
  ),
);
const MARK =
  /\\(?:begin\s*\{([a-zA-Z*]+)\}|end\s*\{document\}|(?:verb|lstinline)\*?(?=[^a-zA-Z])|iffalse(?![a-zA-Z])|endinput(?![a-zA-Z])|[\s\S])|%/g;
const CONDITION = /\\(?:(if(?!f(?![a-zA-Z])|thenelse)[a-zA-Z@]*)|fi|else)(?![a-zA-Z@])/g;

/**
 * A LaTeX text of the same length in which everything that is not typeset is blank: comments, verbatim text, `\iffalse`,
 * what follows the document.
 */
export function liveText(text: string): string {
  const parts: string[] = [];
  let kept = 0;
  const drop = (from: number, to: number) => {
    parts.push(text.slice(kept, from), text.slice(from, to).replace(/[^\r\n]/g, ' '));
    kept = to;
  };
  const lineEnd = lineEnds(text);
  MARK.lastIndex = 0;
  for (let mark = MARK.exec(text); mark; mark = MARK.exec(text)) {
    const { index, 0: token, 1: environment } = mark;
    const next = index + token.length;
    if (token === '%') drop(index, (MARK.lastIndex = lineEnd(index)));
    else if (environment) {
      if (!VERBATIM.has(environment)) continue;
      const end = text.indexOf(`\\end{${environment}}`, next);
      drop(next, (MARK.lastIndex = end === -1 ? text.length : end));
    } else if (/^\\(?:verb|lstinline)/.test(token)) {
      const close = text[next] === '{' ? '}' : text[next];
      const line = lineEnd(next);
      let end = next + 1;
      while (end < line && text[end] !== close) end++;
      drop(index, (MARK.lastIndex = Math.min(end + 1, line)));
    } else if (token === '\\iffalse') drop(index, (MARK.lastIndex = behindFalse(text, next)));
    else if (/^\\end/.test(token) || token === '\\endinput') {
      drop(index, text.length);
      break;
    }
  }
  return parts.join('') + text.slice(kept);
}

/** Finds the end of a line; a long line is searched once, whatever stands in it. */
function lineEnds(text: string): (from: number) => number {
  const ending = /[\r\n]|$/g;
  let known = -1;
  return from => {
    if (from > known) {
      ending.lastIndex = from;
      known = ending.exec(text)!.index;
    }
    return known;
  };
}

/** Behind the `\else` or `\fi` that belongs to an `\iffalse`. */
function behindFalse(text: string, from: number): number {
  let depth = 0;
  CONDITION.lastIndex = from;
  for (let found = CONDITION.exec(text); found; found = CONDITION.exec(text)) {
    if (found[1]) depth++;
    else if (found[0] === '\\fi' && depth-- === 0) return CONDITION.lastIndex;
    else if (found[0] === '\\else' && depth === 0) return CONDITION.lastIndex;
  }
  return text.length;
}
