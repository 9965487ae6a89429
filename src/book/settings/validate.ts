import type { ErrorObject } from 'ajv';
import { house, settings, waivers } from 'compiled-schemas';
import {
  findNodeAtLocation,
  getNodeValue,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser';
import { sentence } from './message';
import { type Problem, positionOf } from './problem';

/** A settings text read: its value where it is sound, its problems where it is not, and its tree for finding places. */
export interface Parsed {
  value: unknown;
  problems: Problem[];
  /** A problem at the value that `path` leads to, or at its key. */
  problemAt(
    path: (string | number)[],
    message: string,
    at?: 'key' | 'value',
    suggestion?: string | null,
  ): Problem;
}

/** The files that people write by hand. */
const validators = { settings, house, waivers };
export type Written = keyof typeof validators;

/** Reads JSON with comments and checks it against the schema of its kind. Pure. Problems come in the order of the text. */
export function parseAgainst(kind: Written, source: string, file: string): Parsed {
  const text = source.startsWith('\uFEFF') ? ` ${source.slice(1)}` : source;
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { allowTrailingComma: true });
  const place = (offset: number, length: number, message: string, suggestion: string | null = null) => ({
    file,
    offset,
    length: Math.max(1, length),
    ...positionOf(text, offset),
    message,
    suggestion,
  });
  const problemAt: Parsed['problemAt'] = (path, message, at = 'value', suggestion = null) => {
    const node = tree && nodeAt(tree, path, at);
    return place(node?.offset ?? 0, spanOf(node), message, suggestion);
  };
  // After one slip the rest of a text reads as nonsense: only the first is told.
  if (errors.length || !tree) {
    const first = errors[0];
    const message = tree || text.trim() ? syntax(text, first) : 'The file is empty. Write {} at least.';
    return {
      value: undefined,
      problems: [place(first?.offset ?? 0, first?.length ?? 0, message)],
      problemAt,
    };
  }
  const problems = [...repeatedKeys(tree)].map(({ node, message }) =>
    place(node.offset, node.length, message),
  );
  const value = getNodeValue(tree);
  const validate = validators[kind];
  if (!validate(value))
    for (const error of telling(validate.errors ?? [])) {
      const path = pathOf(tree, error.instancePath);
      const { message, suggestion } = sentence(error, path);
      problems.push(
        error.keyword === 'additionalProperties'
          ? problemAt([...path, error.params.additionalProperty], message, 'key', suggestion)
          : problemAt(path, message, error.keyword === 'required' ? 'key' : 'value', suggestion),
      );
    }
  problems.sort((a, b) => a.offset - b.offset);
  return { value, problems, problemAt };
}

/** Of a choice of schemas, only the branch that has the value's type tells something worth reading. */
function telling(errors: ErrorObject[]): ErrorObject[] {
  let kept = errors;
  for (const choice of errors.filter(error => error.keyword === 'anyOf')) {
    const branches = new Map<string, ErrorObject[]>();
    for (const error of kept)
      if (error.schemaPath.startsWith(`${choice.schemaPath}/`)) {
        const branch = error.schemaPath.slice(choice.schemaPath.length + 1).split('/')[0];
        branches.set(branch, [...(branches.get(branch) ?? []), error]);
      }
    const right = [...branches.values()].find(branch => !branch.some(e => ofAnotherKind(e, choice)));
    const dropped = new Set([...branches.values()].flat().filter(error => !right?.includes(error)));
    if (right) dropped.add(choice);
    kept = kept.filter(error => !dropped.has(error));
  }
  return kept;
}

/** Words are asked for, and there is a list or an object. */
function ofAnotherKind(error: ErrorObject, choice: ErrorObject): boolean {
  if (error.instancePath !== choice.instancePath) return false;
  return error.keyword === 'type' || (error.keyword === 'enum' && typeof error.data === 'object');
}

/** JSON silently lets the last of two equal keys win; a person would never know. */
function* repeatedKeys(node: Node): Generator<{ node: Node; message: string }> {
  const seen = new Set<string>();
  for (const child of node.children ?? []) {
    if (node.type === 'object') {
      const key = child.children![0];
      if (seen.has(key.value)) yield { node: key, message: `The key "${key.value}" stands here twice.` };
      seen.add(key.value);
    }
    yield* repeatedKeys(child);
  }
}

function nodeAt(tree: Node, path: (string | number)[], at: 'key' | 'value'): Node | undefined {
  const node = findNodeAtLocation(tree, path);
  if (at === 'key' && node?.parent?.type === 'property') return node.parent.children![0];
  return node;
}

/** A whole object underlined would hide what is wrong in it: its brace is enough. */
const spanOf = (node: Node | undefined) =>
  !node ? 0 : node.type === 'object' || node.type === 'array' ? 1 : node.length;

/** JSON pointer to path; a step into a list is a number. */
function pathOf(tree: Node, pointer: string): (string | number)[] {
  const path: (string | number)[] = [];
  for (const raw of pointer.split('/').slice(1)) {
    const step = raw.replaceAll('~1', '/').replaceAll('~0', '~');
    const inList = findNodeAtLocation(tree, path)?.type === 'array';
    path.push(inList ? Number(step) : step);
  }
  return path;
}

const slips: Record<string, string> = {
  CommaExpected: 'A comma is missing before this.',
  ColonExpected: 'A colon is missing before this.',
  PropertyNameExpected: 'A key in double quotes is expected here.',
  ValueExpected: 'A value is expected here.',
  CloseBraceExpected: 'A closing } is missing.',
  CloseBracketExpected: 'A closing ] is missing.',
  EndOfFileExpected: 'Nothing more is expected here.',
  UnexpectedEndOfString: 'A closing quote is missing.',
  UnexpectedEndOfComment: 'The comment is not closed: */ is missing.',
  InvalidEscapeCharacter: 'A backslash is misplaced here: write paths with /, or a backslash twice.',
};

function syntax(text: string, error: ParseError | undefined): string {
  const word = error ? text.slice(error.offset, error.offset + error.length) : '';
  if (word.startsWith("'")) return "Double quotes are needed here, not '.";
  const name = error ? printParseErrorCode(error.error) : '';
  return slips[name] ?? 'This cannot be read as JSON.';
}
