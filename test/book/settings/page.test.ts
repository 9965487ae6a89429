import assert from 'node:assert/strict';
import page from '../../../src/book/settings/README.md';
import { parseAgainst } from '../../../src/book/settings/validate';
import { language } from '../../../src/book/settings/words';
import { parsePrintRecord } from '../../../src/print';
import { rules } from '../../../src/rules';

const examples = [...page.matchAll(/^```\n([\s\S]*?)^```$/gm)].map(match => match[1]);
const [shortest, all, house, record] = examples;

type Node = Record<string, unknown>;

/** Every key that a schema knows, and every word that a key can be. */
function* known(schema: unknown, at = ''): Generator<string> {
  if (Array.isArray(schema)) for (const inner of schema) yield* known(inner, at);
  else if (schema && typeof schema === 'object')
    for (const [key, inner] of Object.entries(schema as Node)) {
      if (key === 'properties')
        for (const [name, value] of Object.entries(inner as Node)) {
          if (!name.startsWith('$')) yield name;
          yield* known(value, name);
        }
      else if (key === 'enum' && !['process', 'paper', 'light'].includes(at)) yield* inner as string[];
      else yield* known(inner, at);
    }
}

describe('page on the settings', () => {
  it('shows examples without a problem', () => {
    for (const [text, kind] of [
      [shortest, 'settings'],
      [all, 'settings'],
      [house, 'house'],
    ] as const)
      assert.deepEqual(parseAgainst(kind, text, 'evengrey.json').problems, []);
    assert.equal(parsePrintRecord(record).readings.length, 1);
    assert.equal(examples.length, 4);
  });

  it('shows every key, and every word but the names that the help lists', () => {
    const { rules: ruleSchema, ...properties } = language.settings.properties as Node;
    for (const word of known({ properties: { ...properties, rules: {} } }))
      assert.ok(all.includes(`"${word}"`), word);
    assert.ok(ruleSchema);
    for (const word of ['off', 'note', 'warning', 'error']) assert.ok(all.includes(`"${word}"`), word);
    assert.ok(rules.some(({ id }) => all.includes(`"${id}"`)));
  });

  it('fits a terminal', () => {
    for (const line of examples.join('').split('\n')) assert.ok(line.length <= 78, line);
  });
});
