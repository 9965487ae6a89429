// no-unit-test: test/book/settings/validate.test.ts reads every sentence of it
import type { ErrorObject } from 'ajv';
import { suggest } from './suggest';

/** What each enumerated key holds, in words. */
const nouns: Record<string, string> = {
  process: 'process',
  paper: 'paper',
  light: 'light',
  route: 'route',
  encodings: 'encoding',
  brightened: 'degree of brightening',
  rules: 'severity',
};
const kinds: Record<string, string> = {
  string: 'text in quotes',
  number: 'a number',
  array: 'a list',
  object: 'an object',
  boolean: 'true or false',
  null: 'null',
};

/** A schema error as a sentence, with the word that was probably meant. `path` leads to the value. */
export function sentence(
  error: ErrorObject,
  path: (string | number)[],
): { message: string; suggestion: string | null } {
  const plain = (message: string) => ({ message, suggestion: null });
  const name = path.length ? `"${path.filter(step => typeof step === 'string').join('.')}"` : 'The file';
  const { keyword, params } = error;
  switch (keyword) {
    case 'additionalProperties': {
      const known = Object.keys(error.parentSchema?.properties ?? {}).filter(key => !key.startsWith('$'));
      const key = params.additionalProperty as string;
      const what = path.at(-1) === 'rules' ? `No rule is called "${key}".` : `Unknown key "${key}".`;
      return withSuggestion(what, key, known);
    }
    case 'enum': {
      const known = params.allowedValues as string[];
      const noun = nouns[kindOfName(path)];
      if (typeof error.data !== 'string')
        return plain(`${name} must be one of ${list(known)}, not ${kindOf(error.data)}.`);
      if (!noun) return withSuggestion(`${name} cannot be "${error.data}".`, error.data, known);
      return withSuggestion(`"${error.data}" is not a known ${noun}.`, error.data, known);
    }
    case 'type':
      return plain(`${name} must be ${kinds[params.type] ?? params.type}, not ${kindOf(error.data)}.`);
    case 'anyOf': {
      const types = (error.schema as { type?: string }[]).map(branch => kinds[branch.type ?? ''] ?? 'text');
      return plain(`${name} must be ${types.join(' or ')}, not ${kindOf(error.data)}.`);
    }
    case 'required':
      return plain(`"${params.missingProperty}" is missing${path.length ? ` in ${name}` : ''}.`);
    case 'minimum':
      return plain(`${name} must be ${params.limit} or more.`);
    case 'maximum':
      return plain(`${name} must be ${params.limit} or less.`);
    case 'exclusiveMinimum':
      return plain(`${name} must be more than ${params.limit}.`);
    case 'exclusiveMaximum':
      return plain(`${name} must be less than ${params.limit}.`);
    case 'minLength':
    case 'minProperties':
      return plain(`${name} must not be empty.`);
    case 'uniqueItems':
      return plain(`${name} says the same thing twice.`);
    case 'minItems':
      return plain(
        params.limit === 1 ? `${name} must not be empty.` : `${name} needs ${params.limit} values.`,
      );
    case 'maxItems':
      return plain(`${name} takes ${params.limit} values at most.`);
    case 'additionalItems':
      return plain(`${name} has more values than it can use.`);
    default:
      return plain(`${name} ${error.message ?? 'is not valid'}.`);
  }
}

function withSuggestion(what: string, word: string, known: string[]) {
  const suggestion = suggest(word, known);
  const help = suggestion ? `Did you mean "${suggestion}"?` : known.length ? `Known: ${list(known)}.` : '';
  return { message: `${what} ${help}`.trimEnd(), suggestion };
}

const list = (words: string[]) => words.join(', ');

function kindOfName(path: (string | number)[]): string {
  const steps = path.filter(step => typeof step === 'string');
  return steps[0] === 'rules' && steps.length === 2 ? 'rules' : (steps.at(-1) ?? 'value');
}

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  return kinds[Array.isArray(value) ? 'array' : typeof value] ?? typeof value;
}
