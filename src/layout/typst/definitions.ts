// no-unit-test: test/layout/typst/index.test.ts reads texts by it
import type { StringLiteral } from './code';

/** `#let plate(name, width: 100%) = ...`, or the same with an arrow. */
export interface Definition {
  name: string;
  /** In their order. */
  positional: readonly string[];
  named: readonly string[];
  /** Where the bracket round its parameters opens; -1: it has none behind its name. */
  bracket: number;
}

const NAME = String.raw`[\p{L}_][\p{L}\p{N}_-]*`;
const PARAMETERS = String.raw`\(((?:[^()]|\([^()]*\))*)\)`;
const FUNCTION = new RegExp(
  String.raw`let\s+(${NAME})(?:${PARAMETERS}\s*=(?!=)|\s*=\s*(?:${PARAMETERS}|(${NAME}))\s*=>)`,
  'uy',
);
const CONSTANT = new RegExp(
  String.raw`let\s+(${NAME})\s*=\s*"((?:[^"\\]|\\[\s\S])*)"(?=[ \t]*(?:[\r\n;\]}]|\/\/|$))`,
  'uy',
);
const LIST = new RegExp(String.raw`for\s+(${NAME})\s+in\s+\(([^()]*)\)`, 'uy');

/** The function that the keyword `let` at `at` defines; null where it defines none. */
export function definitionAt(text: string, at: number): Definition | null {
  FUNCTION.lastIndex = at;
  const found = FUNCTION.exec(text);
  if (!found) return null;
  const [whole, name, direct, arrow, single] = found;
  const all = (direct ?? arrow ?? single ?? '')
    .replace(/\([^()]*\)/g, '')
    .split(',')
    .map(parameter => parameter.trim())
    .filter(parameter => parameter && !parameter.startsWith('..'));
  return {
    name,
    positional: all.filter(parameter => !parameter.includes(':')),
    named: all.flatMap(parameter => (parameter.includes(':') ? parameter.split(':')[0].trim() : [])),
    bracket: direct === undefined ? -1 : at + whole.indexOf('('),
  };
}

/** The string that the keyword `let` at `at` gives a name. */
export function constantAt(text: string, at: number): { name: string; literal: StringLiteral } | null {
  CONSTANT.lastIndex = at;
  const found = CONSTANT.exec(text);
  if (!found) return null;
  const from = at + found[0].indexOf('"') + 1;
  return { name: found[1], literal: { from, to: from + found[2].length } };
}

/** The bracketed list that the keyword `for` at `at` goes through, one by one as they are written. */
export function listAt(text: string, at: number): { name: string; items: StringLiteral[] } | null {
  LIST.lastIndex = at;
  const found = LIST.exec(text);
  if (!found) return null;
  const [whole, name, list] = found;
  const from = at + whole.length - 1 - list.length;
  const items = [...list.matchAll(/(?:"(?:[^"\\]|\\[\s\S])*"|[^,"])+/g)].flatMap(({ index, 0: item }) =>
    item.trim() ? { from: from + index, to: from + index + item.length } : [],
  );
  return { name, items };
}
